// Where do eight modules of 24 kg go in this car? The Wagtail 850, a van of 1967, and all its figures are invented.
import { placeMasses } from 'kerbwatt/mass'

const answer = placeMasses({
  base: { mass: '563 kg', centreOfGravity: { aft: '780 mm', left: '0 mm', up: '455 mm' } },
  groups: [{ name: 'module', mass: '24 kg', count: 8 }],
  bays: [
    { name: 'under the bonnet', at: { aft: '-60 mm', left: '0 mm', up: '560 mm' }, capacity: 4 },
    { name: 'tank bay', at: { aft: '1.45 m', left: '-180 mm', up: '310 mm' }, capacity: 3 },
    { name: 'under the bench', at: { aft: '1.12 m', left: '210 mm', up: '390 mm' }, capacity: 3 },
    { name: 'load floor', at: { aft: '1.98 m', left: '0 mm', up: '520 mm' }, capacity: 6 },
  ],
  wheelbase: '2030 mm',
  track: { front: '1220 mm', rear: '1190 mm' },
  target: { frontShare: '55 %', leftShare: '50 %' },
})

for (const { count, bay, totalMass } of answer.placements) console.log(`${count} ${bay} (${totalMass})`)
console.log(`front ${answer.frontShare}, left ${answer.leftShare}, height ${answer.centreOfGravity.up}`)
console.log(`off target by ${answer.deviation.as('%')}, ${answer.proven ? 'proven to be the least' : 'not proven'}`)
