declare module 'bessel' {
  /** Of the first kind and the order `n`. */
  export function besselj(x: number, n: number): number;
}
