package arena

// full is an arena with every field that the format knows.
const full = `rinkpane: arena 1
name: Full
place: Nowhere
note: every field once
units: imperial
source: guess
rink:
  standard: north-american
  length: 200 ft
  width: 85 ft
  corner-radius: 28 ft
  markings:
    goal-line: 11 ft
    blue-line: 75 ft
    blue-line-to: far-edge
    circle-radius: 15 ft
    spot-from-goal: 20 ft
    spot-from-axis: 22 ft
    neutral-spot: 5 ft
    goal-width: 6 ft
    goal-height: 4 ft
    goal-depth: 40 in
    crease-radius: 6 ft
    crease-width: 8 ft
    line-width: 2 in
    blue-width: 12 in
boards:
  height: 42 in
  ledge: 9 in
  setback: 1 in
  floor: -2 in
  source: {height: measured, ledge: drawing}
glass:
  height: 6 ft
  thickness: 5/8 in
  material: acrylic
  haze: scuffed
panes:
  - id: P1
    from: 80 ft
    width: 4 ft
    height: 8 ft
    thickness: 1/2 in
    material: tempered
    curved: yes
    gate: bench
  - id: P2
    from: {corner: B-box, landmark: goal-line, offset: -4 ft}
    width: 8 ft
  - {id: P3, from: 425 ft, width: 10 ft, count: 2}
holes:
  - id: H1
    place:
      corner: A-bench
      landmark: goal-line
      offset: -3 ft
    height: 58 in
    size: 5.5 in x 4.5 in
    corner-radius: 1/2 in
    rounding: 1/8 in
    cover:
      material: polycarbonate
      tether: no
    state: cut
    note: the first
  - id: H2
    station: 82 ft
    height: 60 in
    size: 6 in x 5 in
low-windows:
  - id: W1
    place: 100 ft
    height: 1 ft
    size: 12 in x 8 in
    kind: panel
    material: laminated
    thickness: 3/8 in
    printed: true
    nearest: 5 m
    note: low
  - id: W2
    station: 120 ft
    height: 1 ft
    size: 8 in x 8 in
    kind: opening
zones:
  - id: Z1
    kind: bench
    from: 500 ft
    to: 20 ft
    note: wraps past the red line
light:
  mains: 60 Hz
  upright-share: 0.7
  colour: 4000 K
  readings:
    - x: 10 ft
      y: -5 ft
      height: 4 ft
      light: 1100 lx
      facing: bench
      colour: 3200 K
game:
  officials: 3
  referees: 1
  linesmen: 2
  benches: opposite
  cross-ice: yes
  home-defends: B
dispensations:
  - rule: no-opening
    holes: [H1]
    by: the board
    reference: letter 7
    until: 2027-05-31
    date: 2026-01-31
lenses: [24-70, 70-200]
kit: house-bag
rules: [common-practice]
`
