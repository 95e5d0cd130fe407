/** The placing of masses as a mixed-integer linear program, for a solver that was made apart from this library. */
import highsLoader from 'highs'

/** A case in plain numbers: metres, kilograms, ratios. */
export interface Case {
  readonly base: { readonly mass: number; readonly aft: number; readonly left: number; readonly up: number }
  readonly groups: readonly { readonly mass: number; readonly count: number }[]
  readonly bays: readonly {
    readonly aft: number
    readonly left: number
    readonly up: number
    readonly capacity: number
    /** The groups that fit, by their place in the list. */
    readonly accepts: readonly number[]
  }[]
  readonly wheelbase: number
  readonly track: number
  readonly target: { readonly frontShare?: number; readonly leftShare?: number; readonly up?: number }
}

const highs = await highsLoader()

/**
 * Solves a case with HiGHS: counts are integer variables, absolute differences are linearised by two inequalities each.
 *
 * @returns The deviation, found to the solver's tolerances of 1e-6, or undefined when it ran out of time.
 */
export function solvedByHighs(given: Case, seconds = 60): number | undefined {
  const { Columns: columns, Status } = highs.solve(programOf(given), {
    time_limit: seconds,
    mip_rel_gap: 0,
    mip_abs_gap: 1e-9,
  })
  if (Status !== 'Optimal') return undefined
  return ['front', 'left', 'up'].reduce((sum, name) => {
    const column = columns[name]
    return sum + (column !== undefined && 'Primal' in column ? column.Primal : 0)
  }, 0)
}

/** The program in the LP format. */
function programOf({ base, groups, bays, wheelbase, track, target }: Case): string {
  const mass = base.mass + groups.reduce((sum, group) => sum + group.mass * group.count, 0)
  const variables = bays.flatMap((bay, b) => bay.accepts.map((g) => ({ name: `x_${g}_${b}`, g, b, bay })))
  const sumText = (terms: readonly (readonly [number, string])[]) =>
    terms.map(([factor, name]) => `${factor < 0 ? '-' : '+'} ${Math.abs(factor).toFixed(15)} ${name}`).join(' ')
  /** Share of a moment: of the modules as a sum over the variables, of the base as a number. */
  const shareOf = (direction: 'aft' | 'left' | 'up', length: number) => ({
    modules: variables.map(
      ({ name, g, bay }) => [((groups[g]?.mass ?? 0) * bay[direction]) / (mass * length), name] as const,
    ),
    base: (base.mass * base[direction]) / (mass * length),
  })
  const rows: string[] = []
  const bounded = (name: string, direction: 'aft' | 'left' | 'up', length: number, wanted: number, below: boolean) => {
    const { modules, base: fixed } = shareOf(direction, length)
    rows.push(`${name}_over: ${sumText([...modules, [-1, name]])} <= ${(wanted - fixed).toFixed(15)}`)
    if (below) rows.push(`${name}_under: ${sumText([...modules, [1, name]])} >= ${(wanted - fixed).toFixed(15)}`)
  }
  const { frontShare, leftShare, up } = target
  if (frontShare !== undefined) bounded('front', 'aft', wheelbase, 1 - frontShare, true)
  if (leftShare !== undefined) bounded('left', 'left', track, leftShare - 0.5, true)
  if (up !== undefined) bounded('up', 'up', wheelbase, up / wheelbase, false)
  groups.forEach(({ count }, g) => {
    rows.push(`all_${g}: ${sumText(variables.filter((x) => x.g === g).map(({ name }) => [1, name]))} = ${count}`)
  })
  bays.forEach(({ capacity }, b) => {
    const within = variables.filter((x) => x.b === b)
    if (within.length > 0) rows.push(`room_${b}: ${sumText(within.map(({ name }) => [1, name]))} <= ${capacity}`)
  })
  const deviations = [
    ...(frontShare === undefined ? [] : ['front']),
    ...(leftShare === undefined ? [] : ['left']),
    ...(up === undefined ? [] : ['up']),
  ]
  return [
    'Minimize',
    ` obj: ${deviations.join(' + ')}`,
    'Subject To',
    ...rows.map((row) => ` ${row}`),
    'General',
    ` ${variables.map(({ name }) => name).join(' ')}`,
    'End',
  ].join('\n')
}
