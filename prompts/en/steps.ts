/** One entry for each step of the procedure: what it is called, and how it is asked for. Key word first. */
export const steps = {
  'job.card': {
    title: 'Job card',
    ask: 'Card is right? {vehicle}, {engine}.< Technician {technician}, second person {second}.>',
  },
  'job.makerFirst': {
    title: 'What comes first',
    ask: "Notice. The engine maker's instructions, local codes and licensed practice come first. Understood?",
  },
  'job.protection': {
    title: 'Eye protection and gloves',
    ask: 'Protection on? Eye protection and gloves, both of you.',
  },
  'job.hazards': {
    title: 'Hazards',
    ask: 'Warning. Clear of fan and belts. Never open a hot cap. Never feel for a leak by hand: fuel under the skin is a surgical emergency. Understood?',
  },
  'job.ventilation': {
    title: 'Exhaust extraction',
    ask: 'Air is good? Hose on the exhaust, extraction running. Without it only in the open: exhaust kills.',
  },
  'job.extinguisher': {
    title: 'Fire extinguisher',
    ask: 'Extinguisher ready? Within reach.',
  },
  'job.autoStart': {
    title: 'Automatic start locked out',
    ask: 'Automatic start locked out? At the {at}, tagged.',
  },
  'job.breaker': {
    title: 'Breaker open',
    ask: 'Breaker is open? The {at}, locked and tagged, until sign-off.',
  },
  'job.gearLever': {
    title: 'Boat made fast',
    ask: 'Lever in neutral? The {at}; boat made fast, nobody near the propeller.',
  },
  'job.coupling': {
    title: 'Driven machine uncoupled',
    ask: 'Coupling open? The {at}, so that nothing is driven.',
  },
  'job.parked': {
    title: 'Vehicle secured',
    ask: 'Vehicle secured? Neutral or park, brake, chocks.',
  },
  'job.cutOff': {
    title: 'Emergency cut-off',
    ask: 'Cut off ready? {how}',
  },
  'job.ambient': { title: 'Air temperature', ask: 'Air temperature, {unit}?' },
  'job.coldestNight': { title: 'Coldest night expected', ask: 'Coldest night<, {unit}>?' },
  'job.altitude': { title: 'Altitude', ask: 'Altitude, {unit}?' },
  'job.figures': {
    title: 'Air, night and altitude',
    ask: 'Air {air}, coldest night {coldest}, altitude {altitude}. Correct?',
  },
  'job.stopTechnician': {
    title: 'Emergency word, technician',
    ask: 'Technician: the emergency word, now. {words}',
  },
  'job.stopSecond': {
    title: 'Emergency word, second person',
    ask: 'Second person: the emergency word, now. {words}',
  },

  'fill.jacketHeater': {
    title: 'Jacket heater off',
    ask: 'Jacket heater off? {at}, until filled, bled and handed back: dry it burns out.',
  },
  'fill.coolantCool': {
    title: 'Cool enough for coolant',
    ask: 'Coolant<, {unit}>? Above {limit} the cap stays shut.',
  },
  'fill.coolantMix': {
    title: 'Coolant mix',
    ask: '{concentrate} of {glycol}, {water} of water<, good to {freeze}>. Mix is ready?',
  },
  'fill.coolantFilled': {
    title: 'Coolant filled',
    ask: 'Fill it slowly, vents and heater valve open. Coolant full?',
  },
  'fill.coolantBleed': { title: 'Bleeding the coolant', ask: 'Bleed it.' },
  'fill.coolantBled': {
    title: 'Coolant without air',
    ask: 'No more air? Level steady.',
  },
  'fill.coolantFreezePoint': {
    title: 'Freeze point measured',
    ask: 'Measured freeze point<, {unit}>?',
  },
  'fill.oilGrade': {
    title: 'Oil grade',
    ask: 'Grade is right? For {coldest}: {grades}.',
  },
  'fill.oilFilterPreFilled': {
    title: 'Oil filter, pre-filled',
    ask: 'Oil filter filled, seal oiled. Filter fitted?',
  },
  'fill.oilFilterDry': {
    title: 'Oil filter, dry',
    ask: 'Oil filter dry, seal oiled. Filter fitted?',
  },
  'fill.oilQuantity': {
    title: 'Oil filled in',
    ask: 'Fill in {capacity} of oil. How much went in<, {unit}>?',
  },
  'fill.oilLevel': {
    title: 'Oil level',
    ask: 'Level is good? Dipstick, between the marks.',
  },
  'fill.fuelInTank': { title: 'Fuel in the tank', ask: 'Fuel in the tank<, {unit}>?' },
  'fill.biodieselShare': { title: 'Biodiesel share', ask: 'Biodiesel, percent?' },
  'fill.fuelGrade': {
    title: 'Fuel for the cold',
    ask: '{tank} in the tank, {share} biodiesel. For {coldest}: {advice}. Fuel is right?',
  },
  'fill.firstFilterPreFilled': {
    title: 'First fuel filter, pre-filled',
    ask: 'First fuel filter filled with clean fuel, seal oiled. Filter fitted?',
  },
  'fill.firstFilterDry': {
    title: 'First fuel filter, dry',
    ask: 'Fuel filter: nothing stands behind it, so dry. Seal oiled. Filter fitted?',
  },
  'fill.secondFilterPreFilled': {
    title: 'Second fuel filter, pre-filled',
    ask: 'Second fuel filter filled with clean fuel, seal oiled. Filter fitted?',
  },
  'fill.secondFilterDry': {
    title: 'Second fuel filter, dry',
    ask: 'Second fuel filter dry, seal oiled. Filter fitted?',
  },
  'fill.steeringFull': {
    title: 'Steering fluid',
    ask: 'Steering full? To the cold mark.',
  },

  'prime.strokes': {
    title: 'Primer strokes',
    ask: 'Pump the hand primer until firm. How many strokes?',
  },
  'prime.firm': { title: 'Primer firm', ask: 'Primer firm?' },
  'prime.screwedHome': { title: 'Primer screwed home', ask: 'Primer screwed home?' },
  'prime.electric': { title: 'Priming pump', ask: 'Priming pump: let it run.' },
  'prime.electricBled': { title: 'Priming pump draws no air', ask: 'No more air? Its tone steady.' },
  'prime.noWeeps': {
    title: 'No weeps',
    ask: 'Second person: no weeps? Filters and primer.',
  },

  'walkRound.sensors': { title: 'Sensors plugged in', ask: '<Sensors.>' },
  'walkRound.hoses': {
    title: 'Hoses and clamps',
    ask: 'Hoses good? Over the bead, clamps behind it and tight.',
  },
  'walkRound.boots': {
    title: 'Intake boots',
    ask: 'Boots good? Intake and charge air, seated and tight.',
  },
  'walkRound.belts': { title: 'Belts', ask: 'Belts good? In their grooves and tensioned.' },
  'walkRound.tools': {
    title: 'Tools out',
    ask: 'All clear of tools? Rags out too, fan free.',
  },
  'walkRound.wiring': {
    title: 'Wiring',
    ask: 'Wiring good? Clear of heat and of what moves.',
  },
  'walkRound.fasteners': {
    title: 'Fasteners marked',
    ask: 'Fasteners marked? Tight first.',
  },

  'walkRound.rawWater': {
    title: 'Raw water shut',
    ask: 'Valve is closed? The {at}, or the exhaust fills while it cranks.',
  },
  'walkRound.strainer': {
    title: 'Raw water strainer',
    ask: 'Water side good? Strainer clean, impeller whole, cock free, hoses tight.',
  },
  'barOver.isolated': {
    title: 'Starter isolated',
    ask: 'Starter isolated? Battery or starter lead off, {off}.',
  },
  'barOver.prelube': {
    title: 'Galleries filled by pump',
    ask: 'Oil pumped in? At the {port}, until pressure shows.',
  },
  'barOver.turboFeed': {
    title: 'Turbo feed oiled',
    ask: 'Turbo oiled? Oil in its feed, wheel turned by hand, line on.',
  },
  'barOver.turned': {
    title: 'Turned by hand',
    ask: 'Bar it over, two full turns, the way it runs. Turns freely, or it binds?',
  },
  'barOver.toolOut': {
    title: 'Bar out',
    ask: 'Bar is out? Cover on, starter and battery connected.',
  },

  'noFuelCrank.disabled': {
    title: 'Fuelling disabled',
    ask: '{how} Fuelling disabled?',
  },
  'noFuelCrank.proved': {
    title: 'Fuelling proved off',
    ask: '{proof} Proved off?',
  },
  'noFuelCrank.batteryLoad': {
    title: 'Battery under load',
    ask: 'Load tester, half the cold-cranking amps, fifteen seconds. Lowest voltage, or no tester?',
  },
  'noFuelCrank.batteryRest': {
    title: 'Battery at rest, no tester',
    ask: 'Then at rest, everything off. Battery voltage?',
  },
  'noFuelCrank.manual': {
    title: 'Mode in manual',
    ask: 'Mode in manual? The {at}, unlocked by whoever locked it; never automatic, tag stays.',
  },
  'noFuelCrank.untilPressure': {
    title: 'Crank for oil pressure',
    ask: '{before} Oil pressure takes about {expected}.',
  },
  'noFuelCrank.holds': {
    title: 'Oil pressure holds',
    ask: '{before} Once more, short: pressure must come back and hold.',
  },
  'noFuelCrank.voltage': {
    title: 'Lowest voltage while cranking',
    ask: 'Second person: lowest voltage while it cranked?',
  },
  'noFuelCrank.oilLevel': {
    title: 'Oil level, galleries full',
    ask: 'Galleries are full now. Top up. Level is good?',
  },
  'noFuelCrank.restored': {
    title: 'Fuelling restored',
    ask: 'Fuelling restored? All connected again, the codes it left cleared.',
  },

  'keyOn.battery': { title: 'Battery at rest', ask: 'Battery voltage at rest?' },
  'keyOn.lamps': { title: 'Lamps, key on', ask: '{on}, do not crank.< Lamps.>' },
  'keyOn.heaterHold': { title: 'Heater', ask: 'Heater: switch off and on, wait for the lamp.' },
  'keyOn.heaterDone': {
    title: 'Wait lamp out',
    ask: 'Wait to start: lamp is out?',
  },
  'keyOn.regeneration': {
    title: 'Regeneration off',
    ask: 'Regeneration off? Inhibited, by its switch or tester.',
  },
  'keyOn.rawWater': { title: 'Raw water still shut', ask: 'Valve is closed? The {at}, until it fires.' },
  'keyOn.faults': { title: 'Fault codes', ask: 'Fault codes: no codes, or read a code?' },

  'firstFire.crank': { title: 'First fire', ask: '{before}' },
  'firstFire.oilPressure': { title: 'Oil pressure shows', ask: 'Oil pressure good?' },
  'firstFire.rawWater': {
    title: 'Raw water flows',
    ask: 'Second person: open the {at}. Water is flowing, or exhaust stays dry?',
  },
  'firstFire.eyes': {
    title: 'Eyes and ears',
    ask: 'Second person: off the fan, one hand at the cut-off. Look and listen.',
  },
  'firstFire.lamps': { title: 'Lamps, running', ask: '<Lamps.>' },
  'firstFire.transient': {
    title: 'Watched fault',
    ask: '{fault}: fault cleared?',
  },
  'firstFire.warningLamp': { title: 'Warning lamp, running', ask: '<Warning lamp.>' },

  'firstRun.run': { title: 'Short first run', ask: 'Leave it at idle. Watch, listen, touch nothing.' },
  'firstRun.runUnloaded': {
    title: 'Short first run',
    ask: 'Leave it without load. Watch, listen, touch nothing.',
  },
  'firstRun.keyOff': {
    title: 'Off after the first run',
    ask: '{off}. Engine is off, standing still?',
  },
  'firstRun.drain': { title: 'Oil runs back', ask: 'Let the oil run back.' },
  'firstRun.oilLevel': {
    title: 'Oil level after the first run',
    ask: 'Level is good? Dipstick, between the marks.',
  },
  'firstRun.look': {
    title: 'Look round after the first run',
    ask: 'Second person: look all round it. Cap stays shut.',
  },
  'firstRun.rawWater': { title: 'Raw water shut again', ask: 'Valve is closed? The {at}, until it fires.' },
  'firstRun.restart': { title: 'Second start', ask: 'Second start. {on}, wait for the lamp. {before}' },
  'firstRun.oilPressure': { title: 'Oil pressure shows again', ask: 'Oil pressure good?' },

  'firstRun.rawWaterOpen': {
    title: 'Raw water flows again',
    ask: 'Second person: open the {at}. Water is flowing, or exhaust stays dry?',
  },
  'checks.idle': { title: 'Idle speed', ask: 'Watch the idle half a minute. Lowest, or hunting?' },
  'checks.fixedSpeed': {
    title: 'Speed without load',
    ask: 'Watch the speed half a minute. Lowest, or hunting?',
  },
  'checks.oilPressure': { title: 'Oil pressure at idle', ask: 'Oil pressure, {unit}?' },
  'checks.charging': { title: 'Charging voltage', ask: 'Charging voltage?' },
  'checks.coolant': { title: 'Coolant temperature', ask: 'Coolant<, {unit}>?' },
  'checks.leaks': {
    title: 'Leak hunt',
    ask: 'Second person: hunt leaks with paper, never a hand.',
  },

  'warmUp.watch': {
    title: 'Warm-up',
    ask: 'Coolant<, {unit}>? Thermostat open, once the upper hose gets hot.',
  },
  'warmUp.fastIdle': {
    title: 'Warm-up at fast idle',
    ask: 'Hold {speed}. Coolant<, {unit}>? Thermostat open, once the upper hose gets hot.',
  },
  'warmUp.hose': {
    title: 'Thermostat felt open',
    ask: 'Thermostat open? Upper hose: infrared thermometer first, a hand only from outside, never near the fan.',
  },
  'warmUp.steeringLocks': {
    title: 'Steering lock to lock',
    ask: 'At idle: steering cap off, slowly lock to lock. No bubbles?',
  },
  'warmUp.levels': {
    title: 'Levels, running',
    ask: 'Levels good? Steering at its mark. Coolant bottle by eye only: coolant cap stays shut.',
  },

  'warmUp.bottle': {
    title: 'Coolant bottle',
    ask: 'Levels good? Coolant bottle by eye only: cap stays shut.',
  },
  'sweeps.first': {
    title: 'Sweep one',
    ask: 'Gently to {speed}, hold. {ask}',
  },
  'sweeps.second': { title: 'Sweep two', ask: 'On to {speed}. {ask}' },
  'sweeps.third': { title: 'Sweep three', ask: 'On to {speed}. {ask}' },
  'sweeps.fourth': { title: 'Sweep four', ask: 'On to {speed}. {ask}' },
  'sweeps.fifth': { title: 'Sweep five', ask: 'On to {speed}. {ask}' },
  'sweeps.sixth': { title: 'Sweep six', ask: 'On to {speed}. {ask}' },
  'sweeps.fixedPressure': {
    title: 'Oil pressure at its speed, warm',
    ask: 'Oil pressure at its speed, warm<, {unit}>?',
  },
  'sweeps.newFaults': { title: 'New faults', ask: 'New codes: no codes, or read a code?' },
  'sweeps.faults': { title: 'New faults', ask: 'Back to idle. New codes: no codes, or read a code?' },

  'shutdown.settle': { title: 'Settle at idle', ask: 'Leave it at idle, so that the turbo cools.' },
  'shutdown.settleUnloaded': {
    title: 'Settle without load',
    ask: 'Leave it without load, so that the turbo cools.',
  },
  'shutdown.keyOff': { title: 'Switched off', ask: '{off}. Engine is off, standing still?' },
  'shutdown.coolant': {
    title: 'Temperature before it is off',
    ask: 'Coolant before it is off<, {unit}>?',
  },
  'shutdown.firstSoak': {
    title: 'Heat soak',
    ask: 'Heat soak: pressure rises. Clear of hoses, cap stays shut.',
  },
  'shutdown.firstLook': { title: 'First look', ask: 'Second person: look, from a distance.' },
  'shutdown.secondSoak': { title: 'Heat soak, next part', ask: 'Cap stays shut.' },
  'shutdown.secondLook': { title: 'Second look', ask: 'Second person: look again.' },
  'shutdown.thirdSoak': { title: 'Heat soak, next part', ask: 'Cap stays shut.' },
  'shutdown.thirdLook': { title: 'Third look', ask: 'Second person: look again.' },
  'shutdown.fourthSoak': { title: 'Heat soak, next part', ask: 'Cap stays shut.' },
  'shutdown.fourthLook': { title: 'Fourth look', ask: 'Second person: look again.' },
  'shutdown.fifthSoak': { title: 'Heat soak, next part', ask: 'Cap stays shut.' },
  'shutdown.fifthLook': { title: 'Fifth look', ask: 'Second person: look again.' },
  'shutdown.sixthSoak': { title: 'Heat soak, next part', ask: 'Cap stays shut.' },
  'shutdown.sixthLook': { title: 'Sixth look', ask: 'Second person: look again.' },

  'signOff.cool': {
    title: 'Cooled down',
    ask: 'Coolant<, {unit}>? Above {limit} the cap stays shut.',
  },
  'signOff.coolantLevel': {
    title: 'Coolant level, cold',
    ask: 'Coolant full, cold?',
  },
  'signOff.oilLevel': {
    title: 'Oil level, cold',
    ask: 'Level is good? Dipstick, between the marks.',
  },
  'signOff.steeringLevel': { title: 'Steering level, cold', ask: 'Steering full?' },
  'signOff.retorque': { title: 'Retorque list', ask: 'Retorque list.' },
  'signOff.handBack': {
    title: 'Handed back',
    ask: '{clear} By whoever locked it: {items}. All handed back?',
  },
  'signOff.openItems': { title: 'Open items', ask: 'Supervisor: open items: {items}. Items noted?' },
  'signOff.sign': { title: 'Sign-off', ask: 'Supervisor: to sign this start, say I sign.' },
} as const satisfies Record<string, { readonly title: string; readonly ask: string }>;
