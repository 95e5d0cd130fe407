/** The part of convert-units 2 that the tests call; the package brings no types. */
declare module 'convert-units' {
  export default function convert(value: number): { from(unit: string): { to(unit: string): number } }
}
