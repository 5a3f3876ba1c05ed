/** One entry for each step of the procedure: what it is called, and how it is asked for. Key word first. */
export const steps = {
  'job.card': {
    title: 'Job card',
    ask: 'Job card: {vehicle}, {engine}. Technician {technician}, second person {second}. If that is right, say card is right.',
  },
  'job.makerFirst': {
    title: 'What comes first',
    ask: "Notice. The engine maker's instructions, local codes and licensed practice come before anything I say. Say understood.",
  },
  'job.protection': {
    title: 'Eye protection and gloves',
    ask: 'Protection: eye protection and gloves on both of you. Say protection on.',
  },
  'job.hazards': {
    title: 'Hazards',
    ask: 'Warning. Keep clear of the fan and the belts. Never open a hot cap. Never feel for a leak by hand: fuel injected under the skin is a surgical emergency. Say understood.',
  },
  'job.ventilation': {
    title: 'Exhaust extraction',
    ask: 'Exhaust gas kills indoors. Doors open or extraction running? Say air is good.',
  },
  'job.extinguisher': {
    title: 'Fire extinguisher',
    ask: 'Extinguisher within reach? Say extinguisher ready.',
  },
  'job.autoStart': {
    title: 'Automatic start locked out',
    ask: 'Automatic start: lock it out and tag it at the {at}, so that nothing starts it but you. Say locked out.',
  },
  'job.breaker': {
    title: 'Breaker open',
    ask: 'Breaker: open, locked and tagged at the {at}. It stays open until sign-off. Say breaker is open.',
  },
  'job.gearLever': {
    title: 'Boat made fast',
    ask: 'Boat made fast, {at} in neutral, nobody near the propeller? Say lever in neutral.',
  },
  'job.coupling': {
    title: 'Driven machine uncoupled',
    ask: 'What it drives is uncoupled at the {at} and cannot turn? Say coupling open.',
  },
  'job.parked': {
    title: 'Vehicle secured',
    ask: 'Vehicle: neutral or park, brake set, wheels chocked? Say vehicle secured.',
  },
  'job.cutOff': {
    title: 'Emergency cut-off',
    ask: 'Cut-off: {how} Say cut off ready.',
  },
  'job.ambient': { title: 'Air temperature', ask: 'Air temperature now, in {unit}?' },
  'job.coldestNight': { title: 'Coldest night expected', ask: 'Coldest night expected, in {unit}?' },
  'job.altitude': { title: 'Altitude', ask: 'Altitude, in {unit}?' },
  'job.figures': {
    title: 'Air, night and altitude',
    ask: 'Air {air}, coldest night {coldest}, altitude {altitude}. Correct?',
  },
  'job.stopTechnician': {
    title: 'Emergency word, technician',
    ask: 'Practise the emergency word. {words} Technician, say it now.',
  },
  'job.stopSecond': {
    title: 'Emergency word, second person',
    ask: 'Practise the emergency word. {words} Second person, say it now.',
  },

  'fill.coolantMix': {
    title: 'Coolant mix',
    ask: 'Coolant: {concentrate} of {glycol} concentrate and {water} of water, good to {freeze}. Say mix is ready.',
  },
  'fill.coolantFilled': {
    title: 'Coolant filled',
    ask: 'Fill the coolant slowly, heater valve open. Say coolant full.',
  },
  'fill.coolantBleed': { title: 'Bleeding the coolant', ask: 'Bleed the coolant.' },
  'fill.coolantBled': {
    title: 'Coolant without air',
    ask: 'Coolant: level steady, no more air? Say no more air.',
  },
  'fill.coolantFreezePoint': {
    title: 'Freeze point measured',
    ask: 'Measure the mix. Freeze point, in {unit}?',
  },
  'fill.oilGrade': {
    title: 'Oil grade',
    ask: 'Oil grade for {coldest}: {grades}. If the oil is one of these, say grade is right.',
  },
  'fill.oilFilterPreFilled': {
    title: 'Oil filter, pre-filled',
    ask: 'Oil filter: fill it, oil the seal, fit it. Say filter fitted.',
  },
  'fill.oilFilterDry': {
    title: 'Oil filter, dry',
    ask: 'Oil filter: fit it dry, oil the seal only. Say filter fitted.',
  },
  'fill.oilQuantity': {
    title: 'Oil filled in',
    ask: 'Oil: fill in {capacity}. How much went in, in {unit}?',
  },
  'fill.oilLevel': {
    title: 'Oil level',
    ask: 'Oil level on the dipstick between the marks? Say level is good.',
  },
  'fill.fuelInTank': { title: 'Fuel in the tank', ask: 'Fuel: how much is in the tank now, in {unit}?' },
  'fill.biodieselShare': { title: 'Biodiesel share', ask: 'Biodiesel share in percent?' },
  'fill.fuelGrade': { title: 'Fuel for the cold', ask: 'Fuel for {coldest}: {advice} Say fuel is right.' },
  'fill.firstFilterPreFilled': {
    title: 'First fuel filter, pre-filled',
    ask: 'First fuel filter: fill it with clean fuel, oil the seal, fit it. Say filter fitted.',
  },
  'fill.firstFilterDry': {
    title: 'First fuel filter, dry',
    ask: 'Fuel filter: nothing stands behind it, so fit it dry. Oil the seal. Say filter fitted.',
  },
  'fill.secondFilterPreFilled': {
    title: 'Second fuel filter, pre-filled',
    ask: 'Second fuel filter: fill it with clean fuel, oil the seal, fit it. Say filter fitted.',
  },
  'fill.secondFilterDry': {
    title: 'Second fuel filter, dry',
    ask: 'Second fuel filter: fit it dry, oil the seal only. Say filter fitted.',
  },
  'fill.steeringFull': {
    title: 'Steering fluid',
    ask: 'Steering fluid to the cold mark. Say steering full.',
  },

  'prime.strokes': {
    title: 'Primer strokes',
    ask: 'Prime: pump the hand primer until it is firm. How many strokes?',
  },
  'prime.firm': { title: 'Primer firm', ask: 'Primer firm? Say primer firm.' },
  'prime.screwedHome': { title: 'Primer screwed home', ask: 'Screw the primer home. Say screwed home.' },
  'prime.electric': { title: 'Priming pump', ask: 'Priming pump: let it run.' },
  'prime.electricBled': {
    title: 'Priming pump draws no air',
    ask: 'Priming pump: no more bubbles, its tone steady? Say no more air.',
  },
  'prime.noWeeps': {
    title: 'No weeps',
    ask: 'Second person: filters and primer dry, no weeps? Say no weeps.',
  },

  'walkRound.sensors': { title: 'Sensors plugged in', ask: 'Sensors.' },
  'walkRound.hoses': {
    title: 'Hoses and clamps',
    ask: 'Hoses: each one over its bead, each clamp behind the bead and tight? Say hoses good.',
  },
  'walkRound.boots': {
    title: 'Intake boots',
    ask: 'Boots: intake and charge air boots seated and tight? Say boots good.',
  },
  'walkRound.belts': { title: 'Belts', ask: 'Belts in their grooves and tensioned? Say belts good.' },
  'walkRound.tools': {
    title: 'Tools out',
    ask: 'Tools and rags out of the bay, fan clear? Say all clear of tools.',
  },
  'walkRound.wiring': {
    title: 'Wiring',
    ask: 'Wiring clear of heat and of anything that moves? Say wiring good.',
  },
  'walkRound.fasteners': {
    title: 'Fasteners marked',
    ask: 'Fasteners tight and marked? Say fasteners marked.',
  },

  'walkRound.rawWater': {
    title: 'Raw water shut',
    ask: 'Raw water: {at} closed while it cranks without firing, or the exhaust fills. Say valve is closed.',
  },

  'barOver.isolated': {
    title: 'Starter isolated',
    ask: 'Before anybody turns it by hand: key out and in your pocket, battery off or starter lead off. Say starter isolated.',
  },
  'barOver.prelube': {
    title: 'Galleries filled by pump',
    ask: 'Galleries: pump oil in at the {port} until pressure shows. Say oil pumped in.',
  },
  'barOver.turboFeed': {
    title: 'Turbo feed oiled',
    ask: 'Turbo: oil into its feed, turn the wheel by hand, feed line on. Say turbo oiled.',
  },
  'barOver.turned': {
    title: 'Turned by hand',
    ask: 'Turn it by hand with the bar, two full turns, the way it runs. Say turns freely, or it binds.',
  },
  'barOver.toolOut': {
    title: 'Bar out',
    ask: 'Bar out, its cover on, starter and battery connected again. Say bar is out.',
  },

  'noFuelCrank.disabled': {
    title: 'Fuelling disabled',
    ask: 'Disable fuelling. {how} Say fuelling disabled.',
  },
  'noFuelCrank.proved': {
    title: 'Fuelling proved off',
    ask: 'Prove it. {proof} Say proved off.',
  },
  'noFuelCrank.batteryLoad': {
    title: 'Battery under load',
    ask: 'Battery under load, tester or lamps and blower for half a minute: lowest voltage?',
  },
  'noFuelCrank.untilPressure': {
    title: 'Crank for oil pressure',
    ask: '{before} Crank without fuel. Oil pressure expected after about {expected} of cranking.',
  },
  'noFuelCrank.holds': {
    title: 'Oil pressure holds',
    ask: 'Once more, a short burst: oil pressure must come back and hold.',
  },
  'noFuelCrank.voltage': {
    title: 'Lowest voltage while cranking',
    ask: 'Second person: lowest battery voltage while it cranked?',
  },
  'noFuelCrank.oilLevel': {
    title: 'Oil level, galleries full',
    ask: 'Galleries are full now. Dipstick: top up between the marks. Say level is good.',
  },
  'noFuelCrank.restored': {
    title: 'Fuelling restored',
    ask: 'Restore fuelling: what was disabled is connected again, and the codes that it left are cleared. Say fuelling restored.',
  },

  'keyOn.battery': { title: 'Battery at rest', ask: 'Battery voltage at rest?' },
  'keyOn.keyOn': { title: 'Key on', ask: 'Key on, do not crank. Say key is on.' },
  'keyOn.lamps': { title: 'Lamps, key on', ask: 'Lamps, key on.' },
  'keyOn.heaterHold': { title: 'Intake heater', ask: 'Intake heater: wait for the lamp.' },
  'keyOn.heaterDone': {
    title: 'Wait lamp out',
    ask: 'Wait to start lamp: is it out? Say lamp is out.',
  },
  'keyOn.regeneration': {
    title: 'Regeneration off',
    ask: 'After-treatment: regeneration switched off, so that no exhaust glows today. Say regeneration off.',
  },
  'keyOn.rawWater': {
    title: 'Raw water still shut',
    ask: 'Raw water: {at} closed until it fires. Say valve is closed.',
  },
  'keyOn.faults': { title: 'Fault codes', ask: 'Fault codes: say no codes, or read a code.' },

  'firstFire.crank': { title: 'First fire', ask: '{before} First fire.' },
  'firstFire.oilPressure': { title: 'Oil pressure shows', ask: 'Oil pressure? Say pressure good.' },
  'firstFire.rawWater': {
    title: 'Raw water flows',
    ask: 'Open the {at} now. Water at the exhaust? Say water is flowing, or exhaust stays dry.',
  },
  'firstFire.eyes': {
    title: 'Eyes and ears',
    ask: 'Second person: clear of the fan, one hand at the cut-off. Look and listen.',
  },
  'firstFire.lamps': { title: 'Lamps, running', ask: 'Lamps, engine running.' },
  'firstFire.transient': {
    title: 'Watched fault',
    ask: 'Watched fault: {fault}. Has it cleared? Say fault cleared.',
  },

  'firstRun.run': {
    title: 'Short first run',
    ask: 'Short first run, no load. Watch, listen, touch nothing.',
  },
  'firstRun.keyOff': {
    title: 'Off after the first run',
    ask: 'Key off, to look it over. When the engine stands still, say engine is off.',
  },
  'firstRun.drain': { title: 'Oil runs back', ask: 'Let the oil run back to the sump.' },
  'firstRun.oilLevel': {
    title: 'Oil level after the first run',
    ask: 'Dipstick: between the marks? Say level is good.',
  },
  'firstRun.look': {
    title: 'Look round after the first run',
    ask: 'Second person: look all round it, engine standing. Cap stays shut.',
  },
  'firstRun.rawWater': {
    title: 'Raw water shut again',
    ask: 'Raw water: {at} closed again until it fires. Say valve is closed.',
  },
  'firstRun.restart': { title: 'Second start', ask: 'Second start. Key on, wait for the lamp.' },
  'firstRun.oilPressure': { title: 'Oil pressure shows again', ask: 'Oil pressure? Say pressure good.' },

  'firstRun.rawWaterOpen': {
    title: 'Raw water flows again',
    ask: 'Open the {at} now. Water at the exhaust? Say water is flowing, or exhaust stays dry.',
  },

  'checks.idle': { title: 'Idle speed', ask: 'Idle speed, five readings. First?' },
  'checks.idleSteady': { title: 'Idle steady', ask: 'Idle steady, no hunting? Say idle steady.' },
  'checks.fixedSpeed': { title: 'Speed without load', ask: 'Speed without load, five readings. First?' },
  'checks.speedSteady': { title: 'Speed steady', ask: 'Speed steady, no hunting? Say speed is steady.' },
  'checks.oilPressure': { title: 'Oil pressure at idle', ask: 'Oil pressure, in {unit}?' },
  'checks.charging': { title: 'Charging voltage', ask: 'Charging voltage?' },
  'checks.coolant': { title: 'Coolant temperature', ask: 'Coolant temperature, in {unit}?' },
  'checks.leaks': {
    title: 'Leak hunt',
    ask: 'Second person: hunt for leaks with a sheet of paper, never a hand.',
  },

  'warmUp.watch': {
    title: 'Warm-up',
    ask: 'Coolant temperature, in {unit}? When the upper hose gets hot, say thermostat open.',
  },
  'warmUp.fastIdle': {
    title: 'Warm-up at fast idle',
    ask: 'At {speed}, held: coolant temperature, in {unit}? When the upper hose gets hot, say thermostat open.',
  },
  'warmUp.steeringLocks': {
    title: 'Steering lock to lock',
    ask: 'Steering: cap off, slowly lock to lock until no more bubbles. Say no bubbles.',
  },
  'warmUp.levels': {
    title: 'Levels, running',
    ask: 'Levels: steering and coolant bottle in range? Say levels good.',
  },

  'warmUp.bottle': { title: 'Coolant bottle', ask: 'Coolant bottle between its marks? Say levels good.' },

  'sweeps.first': {
    title: 'Sweep one',
    ask: 'Raise the speed gently to {speed} and hold. Oil pressure, in {unit}?',
  },
  'sweeps.second': { title: 'Sweep two', ask: 'On to {speed}, gently, and hold. Oil pressure, in {unit}?' },
  'sweeps.third': { title: 'Sweep three', ask: 'On to {speed}, gently, and hold. Oil pressure, in {unit}?' },
  'sweeps.fourth': { title: 'Sweep four', ask: 'On to {speed}, gently, and hold. Oil pressure, in {unit}?' },
  'sweeps.fifth': { title: 'Sweep five', ask: 'On to {speed}, gently, and hold. Oil pressure, in {unit}?' },
  'sweeps.sixth': { title: 'Sweep six', ask: 'On to {speed}, gently, and hold. Oil pressure, in {unit}?' },
  'sweeps.backToIdle': { title: 'Back to idle', ask: 'Back to idle. Say back at idle.' },
  'sweeps.fixedPressure': {
    title: 'Oil pressure at its speed, warm',
    ask: 'At its speed, warm. Oil pressure, in {unit}?',
  },
  'sweeps.faults': { title: 'New faults', ask: 'New fault codes: say no codes, or read a code.' },

  'shutdown.settle': { title: 'Settle at idle', ask: 'Settle: leave it at idle so that the turbo cools.' },
  'shutdown.settleUnloaded': {
    title: 'Settle without load',
    ask: 'Settle: leave it without load so that the turbo cools.',
  },
  'shutdown.keyOff': { title: 'Key off', ask: 'Key off. When the engine stands still, say engine is off.' },
  'shutdown.coolant': {
    title: 'Temperature at key-off',
    ask: 'Before key off: coolant temperature, in {unit}?',
  },
  'shutdown.firstSoak': {
    title: 'Heat soak',
    ask: 'Heat soak: pressure rises now. Stay clear of hoses, cap stays shut.',
  },
  'shutdown.firstLook': { title: 'First look', ask: 'Second person: first look, from a distance.' },
  'shutdown.secondSoak': { title: 'Heat soak goes on', ask: 'Heat soak goes on. Cap stays shut.' },
  'shutdown.secondLook': { title: 'Second look', ask: 'Second person: second look.' },
  'shutdown.thirdSoak': { title: 'Heat soak goes on', ask: 'Heat soak goes on. Cap stays shut.' },
  'shutdown.thirdLook': { title: 'Third look', ask: 'Second person: third look.' },
  'shutdown.fourthSoak': { title: 'Heat soak goes on', ask: 'Heat soak goes on. Cap stays shut.' },
  'shutdown.fourthLook': { title: 'Fourth look', ask: 'Second person: fourth look.' },
  'shutdown.fifthSoak': { title: 'Heat soak goes on', ask: 'Heat soak goes on. Cap stays shut.' },
  'shutdown.fifthLook': { title: 'Fifth look', ask: 'Second person: fifth look.' },
  'shutdown.sixthSoak': { title: 'Heat soak goes on', ask: 'Heat soak goes on. Cap stays shut.' },
  'shutdown.sixthLook': { title: 'Sixth look', ask: 'Second person: sixth look.' },

  'signOff.cool': {
    title: 'Cooled down',
    ask: 'Cold recheck. Coolant temperature, in {unit}? It has to be below {limit} before the cap is opened.',
  },
  'signOff.coolantLevel': {
    title: 'Coolant level, cold',
    ask: 'Coolant level, cold: filled up? Say coolant full.',
  },
  'signOff.oilLevel': {
    title: 'Oil level, cold',
    ask: 'Oil level, rested: between the marks? Say level is good.',
  },
  'signOff.steeringLevel': { title: 'Steering level, cold', ask: 'Steering level? Say steering full.' },
  'signOff.retorque': { title: 'Retorque list', ask: 'Retorque list.' },
  'signOff.openItems': { title: 'Open items', ask: 'Open items: {items}. Supervisor, say items noted.' },
  'signOff.sign': { title: 'Sign-off', ask: 'Supervisor: sign this start. Say I sign.' },
} as const satisfies Record<string, { readonly title: string; readonly ask: string }>;
