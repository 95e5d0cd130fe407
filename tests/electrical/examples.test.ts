/** The examples of electrical questions, run as their reader runs them. */
import { describe, expect, it } from 'vitest'
import { outputOf } from '../example.js'

describe('the example', () => {
  it('of the heater branch refuses what is not made for direct current, and protects the cable', async () => {
    const lines = await outputOf('which-fuse-for-the-heater')
    expect(lines[0]).toMatch(/^1\.5 mm², /)
    expect(lines[1]).toContain('household 20 A: the fuse has no voltage rating for direct current')
    expect(lines[2]).toContain('blade 20 A: the fuse is rated 32 V DC, less than the 201.6 V of the full pack')
    // 2200 A²·s, stated for the fuse.
    expect(lines[3]).toMatch(/^ceramic 20 A: lets through 2200 A²·s of \d+ A²·s$/)
  }, 30_000)
  it('of modules between two voltages finds the two that fit', async () => {
    // 4 · 2 · 29.2 V · 56 Ah and half as much again; 4 · 9.8 kg in a string.
    expect((await outputOf('how-many-modules-fit')).slice(0, 3)).toEqual([
      '4 x 2: 13.08 kWh, 78.4 kg',
      '4 x 3: 19.62 kWh, 117.6 kg',
      '4 x 1: falls to 89.6 V when empty at 200 A, less than the 90 V at which the controller works',
    ])
  }, 30_000)
  it('of a hill shows that its cable is too thin, though its mean current is not', async () => {
    const [mean, followed] = await outputOf('does-a-hill-overheat-the-cable')
    // (240² · 4 + 60² · 6 + 90² · 8) / 20, rooted.
    expect(mean).toMatch(/^root mean square 125\.9 A: 8\d\.\d+ °C/)
    expect(followed).toMatch(/^followed: 1[12]\d\.\d °C after 44 min$/)
  }, 30_000)
})
