/** What `npm run test:deep` does beyond `npm test`: it runs what is long, and draws more random cases. */
export const isDeep = process.env.DEEP === '1'

/** How many random cases are drawn: so many in `npm test`, five times as many in the deep tests unless it is said how many. */
export const runs = (count: number, deep = 5 * count) => (isDeep ? deep : count)
