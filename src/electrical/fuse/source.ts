/** A pack behind a fault: it resists as little as it may in the greatest, as much as it may in the least. */
import { type Quantity, quantity } from '../../quantity/index.js'
import { faultTimeConstant } from './fuse.js'

/** What a pack or a module resists, as far as it is known. */
interface Resisting {
  /** Warm, by a pulse of some seconds. */
  readonly resistance: Quantity<'resistance'>
  /** Warm, within 10 ms. */
  readonly ohmicResistance?: Quantity<'resistance'> | undefined
  /** Nearly empty, in the cold. */
  readonly coldResistance?: Quantity<'resistance'> | undefined
}

/** How much more a nearly empty pack resists in the cold, where nothing better is known. Common practice, no source. @internal */
export const COLD = 3

/**
 * In the first milliseconds: as measured, else half as much as in a pulse of some seconds. Common practice, no source.
 * @internal
 */
export function resistanceAtFirst({ resistance, ohmicResistance }: Resisting): Quantity<'resistance'> {
  return ohmicResistance ?? resistance.over(2)
}

/** Nearly empty, cold and so many times as much by age. @internal */
export function weakestResistance({
  resistance,
  coldResistance,
  ageing,
}: Resisting & { readonly ageing: Quantity<'ratio'> }): Quantity<'resistance'> {
  return (coldResistance ?? resistance.times(COLD)).times(ageing.si)
}

/** How slowly the current of a fault rises whose greatest value is known. @internal */
export function loopTimeConstant(
  inductance: Quantity<'inductance'>,
  voltage: Quantity<'voltage'>,
  current: Quantity<'current'>,
): Quantity<'time'> {
  return faultTimeConstant({ inductance, resistance: quantity('resistance', voltage.si / current.si, 'Ω') })
}
