/** What a browser shows of itself and a camera or kitchen programme writes. A drawing that may hold a programme is none of them. */
export const PICTURE_ENDINGS: readonly string[] = ['jpg', 'jpeg', 'png', 'webp', 'avif'];
