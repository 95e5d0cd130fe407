/**
 * What the class of a fuse tells of it, and which ratings there are.
 *
 * Rests on IEC 60269-1 to -6 (gG, gR, gS, gPV, aR, aM), ISO 8820 (road vehicles) and UL 248 (North America).
 */
import { type Quantity, quantity } from '../../quantity/index.js'

/** A class of fuses, as its standard names it. */
export type FuseClass = 'gG' | 'gR' | 'gS' | 'gPV' | 'aR' | 'aM' | 'automotive' | 'UL 248'

/** All classes of fuses. @internal */
export const fuseClasses: readonly FuseClass[] = ['gG', 'gR', 'gS', 'gPV', 'aR', 'aM', 'automotive', 'UL 248']

/** At what current a fuse opens within which time: its conventional current and time. @internal */
export interface Conventional {
  /** Over the rated current. */
  readonly factor: number
  /** In seconds. */
  readonly time: number
}

/** Times in hours that hold up to a rating in amperes: IEC 60269-1, Table 2, as a trade journal lists them. */
const HOURS = [
  [63, 1],
  [160, 2],
  [400, 3],
  [Number.POSITIVE_INFINITY, 4],
] as const

/** Within what time a link of IEC 60269 opens on an overload, in seconds. @internal */
export function conventionalTime(rating: number): number {
  return 3600 * (HOURS.find(([most]) => rating <= most) as readonly [number, number])[1]
}

/**
 * What a class opens on, and within what time; nothing for a partial range, which opens on faults only. The factors of gG
 * from 16 A were read in copies; the others are from memory.
 * @internal
 */
export function conventionalOf(of: FuseClass, rating: number): Conventional | undefined {
  const time = conventionalTime(rating)
  switch (of) {
    case 'gG':
      return { factor: rating <= 4 ? 2.1 : rating < 16 ? 1.9 : 1.6, time }
    case 'gR':
    case 'gS':
      return { factor: 1.6, time }
    case 'gPV':
      return { factor: 1.45, time }
    case 'automotive':
      return { factor: 1.35, time: 1800 }
    case 'UL 248':
      return { factor: 1.35, time: rating <= 60 ? 3600 : 7200 }
    default:
      return undefined
  }
}

/** Whether a class is made for semiconductors, whose thin element tires sooner; one that is not stated may be. @internal */
export function isSemiconductor(of: FuseClass | undefined): boolean {
  return of === undefined || of === 'gR' || of === 'gS' || of === 'aR'
}

const amperes = (...ratings: readonly number[]): readonly Quantity<'current'>[] =>
  ratings.map((rating) => quantity('current', rating, 'A'))

/**
 * Rated currents of fuse-links in IEC 60269-1, which follow the R10 series, with 6, 12 and 32 A for its 6.3, 12.5
 * and 31.5 A. From memory.
 */
export const preferredRatings: readonly Quantity<'current'>[] = /*@__PURE__*/ (() =>
  amperes(
    ...[
      2, 4, 6, 8, 10, 12, 16, 20, 25, 32, 40, 50, 63, 80, 100, 125, 160, 200, 250, 315, 400, 500, 630, 800, 1000, 1250,
    ],
  ))()

/** A family of fuses: the ratings in which it is made, on whose authority, and the class that they have. */
export interface FuseFamily {
  readonly ratings: readonly Quantity<'current'>[]
  readonly source: string
  readonly class: FuseClass
}

/** Families of fuses by name. */
export const fuseFamilies = /*@__PURE__*/ (() =>
  ({
    R10: { ratings: preferredRatings, source: 'IEC 60269-1', class: 'gG' },
    UL: {
      ratings: amperes(
        ...[
          1, 3, 6, 10, 15, 20, 25, 30, 35, 40, 45, 50, 60, 70, 80, 90, 100, 110, 125, 150, 175, 200, 225, 250, 300, 350,
        ],
        ...[400, 450, 500, 600, 700, 800, 1000, 1200],
      ),
      source: 'NFPA 70 (NEC), 240.6(A)',
      class: 'UL 248',
    },
    blade: {
      ratings: amperes(3, 4, 5, 7.5, 10, 15, 20, 25, 30, 40),
      source: 'ISO 8820-3 (from memory)',
      class: 'automotive',
    },
    'bolt-down': {
      ratings: amperes(30, 40, 50, 60, 70, 80, 100, 125, 150, 175, 200, 225, 250, 300, 350, 400, 450, 500),
      source: 'ISO 8820-5 (from memory)',
      class: 'automotive',
    },
  }) satisfies { readonly [name: string]: FuseFamily })()
