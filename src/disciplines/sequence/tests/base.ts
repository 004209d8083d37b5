/** A small machine with one travel and a hoist, on whose cycle everything holds; few and long ticks, so that it is searched at once. */
export const base = `# YAML 1.2
book: 1
title: Bench
revision: A
axes:
  x:
    drive: belt
    travel: 400 mm
    speed: 200 mm/s
    acceleration: 1000 mm/s²
    switches: { min: S1, max: S2 }
  z:
    drive: hoist
    travel: 300 mm
    speed: 150 mm/s
    acceleration: 1000 mm/s²
    slack-switch: S7
    unpowered: free
    rests-on: a catch
    switches: { max: S6 }
signals:
  S1: { kind: switch }
  S2: { kind: switch }
  S6: { kind: switch }
  S7: { kind: switch }
  S8: { kind: stop }
  S9: { kind: door }
  S11: { kind: button }
  S12: { kind: button }
  S13: { kind: button }
  S14: { kind: button }
  H3: { kind: lamp }
sequence:
  tick: 500 ms
  initial: waking
  tells: [H3]
  cut-by: [S8]
  hold-to-run: S12
  harmless-falls: [z]
  settles-within: 60 s
  longest-play: 40 s
  energised-idle: 30 s
  against-an-end: 20 s
  faults: { at-most: 1, kinds: [dead, stuck, stalls, reset] }
  states:
    waking:
      transitions:
        - { cond: { on: [S8] }, target: latched }
        - { cond: { on: [S9] }, target: latched }
        - { after: 500 ms, target: homing-z }
    running:
      initial: homing-z
      transitions:
        - { on: S8, target: latched }
        - { on: S9, target: latched }
    homing-z:
      in: running
      onentry: [{ drives: on }, { home: z }]
      transitions:
        - { done: z, target: proving }
        - { after: 5 s, target: latched }
    proving:
      in: running
      onentry: [{ lower: z, until: S7 }]
      transitions:
        - { off: S6, target: docking }
        - { after: 2 s, target: latched }
    docking:
      in: running
      onentry: [{ hoist: z }]
      transitions:
        - { done: z, target: homing-x }
        - { event: z.early, target: latched }
        - { after: 5 s, target: latched }
    homing-x:
      in: running
      travels-low: true
      onentry: [{ home: x }]
      transitions:
        - { off: S6, target: latched }
        - { done: x, target: ready }
        - { after: 5 s, target: latched }
    ready:
      is: ready
      onentry: [{ drives: off }, { servo: off }]
      transitions:
        - { on: S14, target: service }
        - { on: S11, cond: { on: [S6], off: [S8, S9] }, target: aiming }
    aiming:
      in: running
      play: begun
      onentry: [{ drives: on }, { jog: x }]
      transitions:
        - { on: S13, target: lowering }
        - { off: S6, target: latched }
        - { after: 10 s, target: lowering }
    lowering:
      in: running
      onentry: [{ servo: release }, { lower: z, until: S7 }]
      transitions:
        - { done: z, target: hoisting }
        - { after: 5 s, target: latched }
    hoisting:
      in: running
      onentry: [{ servo: grip }, { hoist: z }]
      transitions:
        - { done: z, target: carrying }
        - { event: z.early, target: latched }
        - { after: 5 s, target: latched }
    carrying:
      in: running
      onentry: [{ move: x, to: min }]
      transitions:
        - { off: S6, target: latched }
        - { done: x, target: dropping }
    dropping:
      in: running
      play: ended
      onentry: [{ servo: release }, { wait: 1 s }]
      transitions: [{ event: waited, target: ready }]
    service:
      is: latched
      onentry: [{ drives: off }, { lamp: H3, to: on }]
      onexit: [{ lamp: H3, to: off }]
      transitions:
        - { on: S12, cond: { off: [S8] }, target: crawling }
        - { on: S14, target: latched }
    crawling:
      service: true
      travels-low: true
      onentry: [{ drives: on }, { jog: x }]
      onexit: [{ drives: off }]
      transitions:
        - { off: S12, target: service }
        - { on: S8, target: latched }
        - { after: 10 s, target: latched }
    latched:
      is: latched
      play: lost
      onentry: [{ drives: off }, { servo: off }, { lamp: H3, to: on }]
      onexit: [{ lamp: H3, to: off }]
      transitions:
        - { on: S14, cond: { off: [S8, S9] }, target: waking }
`;
