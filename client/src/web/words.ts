/** The words that whoever reads the packed file must know (RFC 7932, appendix A): those of them that stand in it, put here before it is read. */
export const words = new Uint8Array(122_784);
