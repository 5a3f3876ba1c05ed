/** What several steps are called when they are asked together. */
export const groups = {
  coolantIn: { title: 'Coolant mixed and filled' },
  bottles: { title: 'Coolant bled, steering full' },
  gradeAndFilter: { title: 'Oil grade and filter' },
  fuelAndFilters: { title: 'Fuel and fuel filters' },
  primer: { title: 'Primer firm and screwed home' },
  hosesBootsBelts: { title: 'Hoses, boots and belts' },
  oilFeeds: { title: 'Oil to galleries and turbo' },
  wiringFasteners: { title: 'Wiring and fasteners' },
  coldLevels: { title: 'Coolant and steering, cold' },
} as const satisfies Record<string, { title: string }>;

/** What a step asks for, in a few words beside the others of its group. */
export const items = {
  'fill.coolantMix': '{concentrate} of {glycol}, {water} of water<, good to {freeze}>',
  'fill.coolantFilled': 'filled slowly, vents and heater valve open',
  'fill.coolantBled': 'coolant steady without bubbles',
  'fill.steeringFull': 'steering at the cold mark',
  'fill.oilGrade': '{grades}',
  'fill.oilFilterPreFilled': 'filter filled, seal oiled',
  'fill.oilFilterDry': 'filter dry, seal oiled',
  'fill.fuelGrade': 'with {tank} in the tank, {share} biodiesel, for {coldest}: {advice}',
  'fill.firstFilterPreFilled': 'first filter filled, seal oiled',
  'fill.firstFilterDry': 'fuel filter dry, seal oiled',
  'fill.secondFilterPreFilled': 'second filter filled, seal oiled',
  'fill.secondFilterDry': 'second filter dry, seal oiled',
  'prime.firm': 'hard to push',
  'prime.screwedHome': 'screwed down',
  'walkRound.hoses': 'hoses over the bead and clamped behind it',
  'walkRound.boots': 'boots seated',
  'walkRound.belts': 'belts tensioned',
  'walkRound.wiring': 'clear of heat and of what moves',
  'walkRound.fasteners': 'tight and marked',
  'barOver.prelube': 'pumped in at the port until pressure shows',
  'barOver.turboFeed': 'turbo feed filled, wheel turned by hand',
  'signOff.coolantLevel': 'coolant bottle',
  'signOff.steeringLevel': 'steering fluid',
} as const satisfies Record<string, string>;
