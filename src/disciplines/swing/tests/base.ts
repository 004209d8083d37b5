/** A small machine whose load hangs free while it travels, and on which everything holds. Exact, so that each case moves one thing. */
export const base = `book: 1
title: Bench
revision: A
axes:
  x:
    drive: belt
    travel: 560 mm
    speed: 100 mm/s
    acceleration: 250 mm/s²
    wall: 200 mm
  z:
    drive: hoist
    travel: 700 mm
    speed: 160 mm/s
    acceleration: 500 mm/s²
    dock: { kind: rest, catch: 60 mm, lean: 15°, below-pivot: 140 mm, misses: 1 % }
hanging:
  halves-after: 10 swings
  centre-of-mass-below-hook: 70 mm
  lift-off-offset: 20 mm
  lift-off-scatter: 10 mm
  half-width: 85 mm
  head: 10 mm
  calm: 8°
  dwell: 1 s
`;
