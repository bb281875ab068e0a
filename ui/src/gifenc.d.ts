declare module "gifenc" {
  interface Frame {
    palette?: number[][] | undefined;
    delay?: number; // ms
  }
  export function GIFEncoder(): {
    writeFrame(pixels: Uint8Array, width: number, height: number, options: Frame): void;
    finish(): void;
    bytes(): Uint8Array;
  };
  export function quantize(rgba: Uint8ClampedArray, colours: number): number[][];
  export function applyPalette(rgba: Uint8ClampedArray, palette: number[][]): Uint8Array;
}
