/** @returns a longer copy of an array, zeros at its end */
export function widened(array: Int32Array, length: number): Int32Array<ArrayBuffer> {
  const wider = new Int32Array(length);
  wider.set(array);
  return wider;
}
