import type { BySentence } from '../types.ts';

/** What the interview that makes an engine profile asks, offers and refuses, by its English sentence. */
export const interview: BySentence = {
  // Questions.
  'Units of the manual': 'Unidades del manual',
  'Is it a real engine?': '¿Es un motor real?',
  'Name of the profile': 'Nombre del perfil',
  Engine: 'Motor',
  Cylinders: 'Cilindros',
  Displacement: 'Cilindrada',
  'Rated speed': 'Régimen nominal',
  'What it drives': 'Lo que mueve',
  'Where its automatic start is locked out': 'Dónde se bloquea su arranque automático',
  'Its breaker': 'Su disyuntor',
  'Its gear lever': 'Su palanca de marchas',
  'Where the driven machine is uncoupled': 'Dónde se desacopla la máquina movida',
  'It runs at its rated speed only?': '¿Funciona solo a su régimen nominal?',
  Exhaust: 'Escape',
  'The cock of the raw water': 'La llave del agua de mar',
  'After-treatment': 'Postratamiento',
  'Steering with fluid of its own?': '¿Dirección con líquido propio?',
  Volts: 'Voltios',
  'A turbocharger?': '¿Un turbocompresor?',
  'Fuelling, and so how it is kept from firing': 'La inyección, y así cómo se impide que encienda',
  'What is unplugged or moved for that': 'Lo que se desenchufa o se mueve para ello',
  'What switches it off every day, as it is called out': 'Lo que lo apaga cada día, como se anuncia',
  'Its jacket heater: where it is switched or unplugged':
    'Su calefactor de bloque: dónde se apaga o se desenchufa',
  'it is named in every call-out, and where it is switched off': 'se nombra en cada aviso, y donde se apaga',
  'on the panel or at the helm: what stops it every day, as one would call it':
    'en el cuadro o en el puesto de mando: lo que lo apaga cada día, como se diría',
  'it burns out dry: off until the engine is filled and bled, given back at the end':
    'en seco se quema: apagado hasta llenar y purgar el motor, devuelto al final',
  'on the block: a heater on the mains, of standby sets above all':
    'en el bloque: un calefactor de red, sobre todo en grupos de emergencia',
  'What shuts it off when the key does not': 'Lo que lo corta cuando la llave no lo hace',
  'Speed at which it has to be shut off': 'Régimen al que hay que cortarlo',
  'Speed without load, from and to': 'Régimen sin carga, desde y hasta',
  'Idle, warm, from and to': 'Ralentí en caliente, desde y hasta',
  'Idle, cold, from and to': 'Ralentí en frío, desde y hasta',
  'Least oil pressure at idle, hot': 'Presión mínima de aceite al ralentí, en caliente',
  'Least oil pressure at rated speed, hot': 'Presión mínima de aceite al régimen nominal, en caliente',
  'Oil relief valve opens at': 'La válvula de alivio del aceite abre a',
  'Key off if no oil pressure within': 'Contacto fuera si no hay presión de aceite en',
  'Oil with a new filter': 'Aceite con filtro nuevo',
  'Oil grades allowed': 'Grados de aceite permitidos',
  'Oil filter': 'Filtro de aceite',
  'Coolant in the whole system': 'Refrigerante de todo el sistema',
  Glycol: 'Glicol',
  'Glycol allowed, from and to': 'Glicol permitido, desde y hasta',
  'Thermostat begins to open': 'El termostato empieza a abrir',
  'Thermostat fully open': 'Termostato del todo abierto',
  'Hottest coolant allowed': 'Refrigerante más caliente permitido',
  'Pressure of the radiator cap': 'Presión del tapón del radiador',
  'Fuel tank': 'Depósito de combustible',
  'Fuel filters one behind the other': 'Filtros de combustible uno tras otro',
  'First fuel filter, fitted': 'Primer filtro de combustible, montado',
  'Second fuel filter, fitted': 'Segundo filtro de combustible, montado',
  Primer: 'Cebador',
  'Most biodiesel allowed': 'Máximo de biodiésel permitido',
  'Heater for cold starts': 'Ayuda para arrancar en frío',
  'Its wait in the cold': 'Su espera en frío',
  'Cranking speed': 'Régimen con el arranque',
  'Longest crank': 'Accionamiento más largo del arranque',
  'Rest between cranks': 'Descanso entre accionamientos',
  'Longest cranks in a row, then it has to cool': 'Accionamientos largos seguidos, luego tiene que enfriarse',
  'Port where oil is pumped in before it turns': 'Toma por la que se bombea aceite antes de que gire',
  'A short first run, then off for a look?': '¿Una primera marcha corta, y apagar para mirar?',
  'Charging voltage, of 12 V at 25 °C (77 °F)': 'Tensión de carga, de 12 V a 25 °C (77 °F)',
  'Sensors, with commas between': 'Sensores, separados por comas',
  'Lamps of the panel, with commas between': 'Testigos del tablero, separados por comas',
  'What is torqued again when cold, with commas between': 'Lo que se reaprieta en frío, separado por comas',
  'A J1939 bus that may be read?': '¿Un bus J1939 que se pueda leer?',
  'What it gives, with commas between': 'Lo que da, separado por comas',
  "Address of the engine's controller": 'Dirección de la unidad del motor',

  // Choices.
  'metric: L, bar, °C': 'métricas: L, bar, °C',
  'metric with kPa: L, kPa, °C': 'métricas con kPa: L, kPa, °C',
  'US: qt, psi, °F': 'de EE. UU.: qt, psi, °F',
  'a vehicle: truck, bus, tractor': 'un vehículo: camión, autobús, tractor',
  'a generating set': 'un grupo electrógeno',
  'a boat': 'un barco',
  'a pump or another machine': 'una bomba u otra máquina',
  dry: 'seco',
  'wet: raw water is let into it': 'húmedo: le entra agua de mar',
  none: 'ninguno',
  'a particulate filter that regenerates': 'un filtro de partículas que se regenera',
  '12 V': '12 V',
  '24 V': '24 V',
  'electronic (common rail, unit injectors): a plug is pulled':
    'electrónica (conducto común, inyectores bomba): se saca un enchufe',
  'mechanical: a lever is put to no delivery': 'mecánica: se pone una palanca a caudal nulo',
  'mechanical with a shut-off solenoid: its plug is pulled':
    'mecánica con solenoide de corte: se saca su enchufe',
  'mechanical with a solenoid that shuts off by current: its lever is tied at stop':
    'mecánica con solenoide que corta con corriente: se ata su palanca en parada',
  'filled with oil first': 'llenado con aceite antes',
  'fitted dry': 'montado en seco',
  ethylene: 'etileno',
  propylene: 'propileno',
  one: 'uno',
  two: 'dos',
  'filled with clean fuel first': 'llenado antes con combustible limpio',
  'pumped by hand': 'bombeado a mano',
  'an electric pump': 'una bomba eléctrica',
  'intake heater': 'calentador de admisión',
  'glow plugs': 'bujías de precalentamiento',

  // Why it is asked.
  'a number without a unit is taken in these': 'un número sin unidad se toma en estas',
  'a real one is not started on what is only assumed; one for practice is: answer no':
    'uno real no se arranca con lo que solo se supone; uno de práctica sí: responda no',
  'people choose by it': 'se elige por él',
  'the sweeps stay well below it, and oil pressure is given at it':
    'las subidas quedan muy por debajo, y la presión de aceite se da a él',
  'it need not be spoken': 'no hay que decirlo',
  'only what the engine itself sends is acted on': 'solo se actúa según lo que envía el propio motor',
  'it stands in the record': 'figura en el registro',
  'it tells the engine apart in the record': 'distingue el motor en el registro',
  'how fast it can warm and cool at all: what is read against that is questioned':
    'lo rápido que puede calentarse y enfriarse: lo que se lea en contra se pone en duda',
  'what is secured before it turns: a vehicle, a breaker and automatic start, a gear lever, a coupling':
    'lo que se asegura antes de que gire: un vehículo, un disyuntor y el arranque automático, una palanca de marchas, un acoplamiento',
  'with raw water in it the cock is shut while it cranks without firing, so that it does not fill':
    'con agua de mar la llave se cierra mientras gira sin encender, para que no se llene',
  'no regeneration beside joints that nobody has looked at':
    'nada de regenerar junto a juntas que nadie ha mirado',
  'its fluid is filled, bled and looked at': 'su líquido se llena, se purga y se mira',
  'an engine that runs at one speed has no idle and no sweeps':
    'un motor de un solo régimen no tiene ralentí ni subidas',
  'every limit of a voltage': 'todos los límites de tensión',
  'its bearings want oil before they turn': 'sus cojinetes quieren aceite antes de girar',
  'both people have it in hand before anything turns': 'los dos lo tienen a mano antes de que nada gire',
  'an engine that runs away is stopped at this speed, by voice and by the bus':
    'un motor que se embala se para a este régimen, por voz y por el bus',
  'how fuelling is disabled, and how that is proved, before it is cranked for oil':
    'cómo se anula la inyección, y cómo se prueba, antes de girarlo para el aceite',
  'it is named when it is disabled, proved and restored': 'se nombra al anular, probar y restablecer',
  'how much of it stands the coldest night': 'cuánto hace falta para la noche más fría',
  'how much concentrate and water to fill in': 'cuánto concentrado y agua se echan',
  'how much of the can makes the mix': 'cuánto del bidón hace la mezcla',
  'weaker coolant does not keep rust and pitting away':
    'un refrigerante más flojo no evita el óxido ni las picaduras',
  'stronger coolant carries less heat and freezes sooner again':
    'un refrigerante más fuerte lleva menos calor y vuelve a helarse antes',
  'the mix freezes so much below it': 'la mezcla se hiela tanto por debajo',
  'where the coolant boils here, and so how hot it may be switched off':
    'a cuánto hierve aquí el refrigerante, y así lo caliente que se puede apagar',
  'air that stays under the head boils it': 'el aire que queda bajo la culata lo hace hervir',
  'how much goes in at first': 'cuánto se echa al principio',
  'more or less than this is asked again before the dipstick':
    'más o menos que esto se pregunta otra vez antes de la varilla',
  'which of them suits the coldest night, and how long oil takes to the gauge':
    'cuál vale para la noche más fría, y lo que tarda el aceite hasta el manómetro',
  'the grade is judged at it': 'el grado se juzga a ella',
  'thinner oil does not carry the bearings': 'un aceite más fino no sostiene los cojinetes',
  'how much longer cold oil takes to the gauge': 'cuánto más tarda el aceite frío hasta el manómetro',
  'how it is fitted': 'cómo se monta',
  'how much No. 1 to add for the cold': 'cuánto combustible de invierno añadir para el frío',
  'the blend for the coldest night': 'la mezcla para la noche más fría',
  'the fuel clouds so much below it': 'el combustible se enturbia tanto por debajo',
  'what the trade would fill, said beside the blend': 'lo que echaría el oficio, dicho junto a la mezcla',
  'more of it is refused': 'más se rechaza',
  'after-treatment is ruined by more': 'más estropea el postratamiento',
  'how each is fitted: nothing dirty may get behind the last':
    'cómo se monta cada uno: nada sucio debe pasar tras el último',
  'strokes are counted, or a pump is let run': 'se cuentan los bombeos, o se deja andar una bomba',
  'it runs so long before it is looked at': 'anda ese tiempo antes de que se mire',
  'more than this means air that comes in somewhere':
    'más que esto quiere decir que entra aire por algún sitio',
  'bearings have oil before the first turn': 'los cojinetes tienen aceite antes de la primera vuelta',
  'what leaks is found within minutes, on an engine that stands':
    'lo que fuga se halla en minutos, con el motor parado',
  'each plug is looked at by name': 'cada enchufe se mira por su nombre',
  'each is looked at with the key on, and running': 'cada uno se mira con el contacto puesto, y en marcha',
  'how long to wait for the lamp before cranking': 'cuánto esperar al testigo antes de accionar el arranque',
  'when oil pressure can come at the earliest, and is late':
    'cuándo puede llegar la presión de aceite, y cuándo tarda',
  'the starter is ruined by longer ones': 'más largos estropean el arranque',
  'the starter cools before the next one': 'el arranque se enfría antes del siguiente',
  'then the starter has to cool down': 'luego el arranque tiene que enfriarse',
  'the thermal budget of the starter': 'la reserva térmica del arranque',
  'on hotter days less': 'en días más calientes, menos',
  'how fast it cools': 'lo rápido que se enfría',
  'more of them hide what is wrong': 'más esconden lo que va mal',
  'seconds of cranking to oil pressure': 'segundos de arranque hasta la presión de aceite',
  'earliest and latest time': 'tiempo más corto y más largo',
  'the latest time': 'el tiempo más largo',
  'the earliest time': 'el tiempo más corto',
  'cranking ends, and the cause is looked for': 'se deja de accionar, y se busca la causa',
  'one flicker of a needle is no pressure': 'un temblor de aguja no es presión',
  'later than this the engine is stopped': 'más tarde que esto se para el motor',
  'no number above it is listened for': 'ningún número por encima se escucha',
  'below it the needle may only lie': 'por debajo la aguja puede engañar',
  'a higher reading is doubted': 'una lectura mayor se pone en duda',
  'below it the engine is stopped': 'por debajo se para el motor',
  'idle is judged by it': 'el ralentí se juzga por él',
  'more is hunting': 'más es oscilar',
  'whether it charges': 'si carga',
  'a weak battery ends in the middle of a crank': 'una batería floja se acaba en medio de un accionamiento',
  'the end of the warm-up': 'el final del calentamiento',
  'hotter than this it is stuck': 'más caliente que esto está agarrotado',
  'above it the engine is stopped': 'por encima se para el motor',
  'a gauge is not exact': 'un instrumento no es exacto',
  'oil has to be everywhere': 'el aceite tiene que estar en todas partes',
  'a thermostat that does not open by then is an open item':
    'un termostato que no abra para entonces es un punto pendiente',
  'the curve wants readings': 'la curva quiere lecturas',
  'new rings glaze at light idle: then fast idle':
    'los aros nuevos se cristalizan al ralentí: entonces ralentí acelerado',
  'it warms on at this speed': 'sigue calentándose a este régimen',
  'pressure has to follow speed, gently': 'la presión tiene que seguir al régimen, con suavidad',
  'the turbo cools': 'el turbo se enfría',
  'pressure rises when nothing carries heat away': 'la presión sube cuando nada se lleva el calor',
  'a hot cap scalds': 'un tapón caliente escalda',
  'it must not boil then': 'no debe hervir entonces',
  'people move: then it is asked again': 'la gente se mueve: entonces se pregunta otra vez',
  'whether it blocks, may stay, or has to clear': 'si bloquea, puede quedar, o tiene que borrarse',
  'what need not be spoken; by itself it opens no gate':
    'lo que no hay que decir; por sí solo no abre ningún paso',
  'it is gone through before the signature': 'se recorre antes de la firma',
  'none of them opens a gate': 'ninguno abre un paso siguiente',

  // Where it is found.
  'look at any table of the manual': 'mire cualquier tabla del manual',
  'you know': 'usted lo sabe',
  'what the shop calls this engine': 'como llama el taller a este motor',
  'data plate: power at so many rpm': 'placa: potencia a tantas vueltas',
  'a log of the bus: "engine from-bus" reads it out': 'un registro del bus: «engine from-bus» lo lee',
  'data plate': 'placa del motor',
  'data plate, or the specifications on the first pages':
    'placa, o las características de las primeras páginas',
  'you know: a vehicle, a generating set, a boat, a pump or another machine':
    'usted lo sabe: un vehículo, un grupo electrógeno, un barco, una bomba u otra máquina',
  'on the engine: water comes out with the exhaust': 'en el motor: sale agua con el escape',
  'on the exhaust': 'en el escape',
  'on the vehicle': 'en el vehículo',
  'data plate of a generating set: 1500 rpm for 50 Hz, 1800 for 60 Hz':
    'placa de un grupo: 1500 rpm para 50 Hz, 1800 para 60 Hz',
  'starter or alternator plate': 'placa del arranque o del alternador',
  'on the engine': 'en el motor',
  'on the engine: shut-off lever, fuel cock, air flap; manual, emergency stop':
    'en el motor: palanca de corte, llave de combustible, trampilla de aire; manual, corte de emergencia',
  'manual, specifications: overspeed setting; else a tenth above the highest speed without load':
    'manual, datos técnicos: ajuste de sobrevelocidad; si no, una décima parte sobre la velocidad máxima sin carga',
  'fuel system: electronic injection, rack lever, or a solenoid: unplugged it shuts off, or it shuts off only while it has current':
    'sistema de combustible: inyección electrónica, palanca de cremallera, o solenoide: desenchufado corta, o solo corta mientras tiene corriente',
  'on the engine, or the manual, fuel system': 'en el motor, o el manual, sistema de combustible',
  'manual, fluids and capacities': 'manual, líquidos y capacidades',
  'manual, fluids and capacities: with radiator and heater':
    'manual, líquidos y capacidades: con radiador y calefacción',
  'label of the coolant': 'etiqueta del refrigerante',
  'manual, coolant: allowed mix': 'manual, refrigerante: mezcla permitida',
  'common practice': 'práctica común',
  'stamped on the cap': 'estampado en el tapón',
  'manual, filling the cooling system': 'manual, llenado del refrigerante',
  'manual, fluids and capacities: with filter': 'manual, líquidos y capacidades: con filtro',
  'dipstick: between its marks, halved': 'varilla: entre sus marcas, la mitad',
  'manual, oil: chart of grades by temperature ("10W-30 below 0 °F"); viscosities from the data sheet of the oil':
    'manual, aceite: tabla de grados por temperatura («10W-30 bajo 0 °F»); viscosidades de la ficha del aceite',
  'in no manual: a figure of the calculation; leave it as proposed unless you measured it':
    'en ningún manual: una cifra del cálculo; déjela como se propone salvo que la haya medido',
  'manual, oil; else the least that its grade promises':
    'manual, aceite; si no, lo menos que promete su grado',
  'manual, oil filter: filled first where it hangs': 'manual, filtro de aceite: llenado antes si cuelga',
  'manual, fluids and capacities; plate of the tank': 'manual, líquidos y capacidades; placa del depósito',
  'supplier of the fuel': 'proveedor del combustible',
  'manual, fuel; label at the filler': 'manual, combustible; etiqueta en la boca de llenado',
  'manual, fuel filter: dry or pre-filled': 'manual, filtro de combustible: en seco o llenado',
  'on the engine, at the fuel filter': 'en el motor, en el filtro de combustible',
  'manual, bleeding the fuel system': 'manual, purga del sistema de combustible',
  'manual, oil system: gallery plug': 'manual, engrase: tapón de galería',
  'manual, first start after an overhaul': 'manual, primer arranque tras una reparación',
  'wiring diagram; on the engine': 'esquema eléctrico; en el motor',
  'manual, instruments; turn the key and look': 'manual, instrumentos; gire la llave y mire',
  'manual, starting: preheating': 'manual, arranque: precalentamiento',
  'manual, starting; or measured': 'manual, arranque; o medido',
  'manual, starting: never longer than': 'manual, arranque: nunca más de',
  'manual, starting: wait between tries': 'manual, arranque: espera entre intentos',
  'manual, starting: tries before it has to cool': 'manual, arranque: intentos antes de que se enfríe',
  'manual, oil pump; or its gears measured': 'manual, bomba de aceite; o sus engranajes medidos',
  'teeth of its drive counted': 'dientes de su accionamiento contados',
  'measured: what the sump lacks after the first crank':
    'medido: lo que falta en el cárter tras el primer accionamiento',
  'manual, starting: stop if no pressure within': 'manual, arranque: cortar si no hay presión en',
  'on the gauge': 'en el manómetro',
  'gauge: first mark; or the switch of the lamp': 'manómetro: primera marca; o el interruptor del testigo',
  'manual, oil system: relief valve': 'manual, engrase: válvula de alivio',
  'manual, specifications: least oil pressure at idle and at rated speed':
    'manual, características: presión mínima de aceite al ralentí y al régimen nominal',
  'manual, specifications; or the plate': 'manual, características; o la placa',
  'manual, governor': 'manual, regulador',
  'alternator plate or regulator': 'placa del alternador o regulador',
  'manual, charging': 'manual, carga',
  'stamped on the thermostat': 'estampado en el termostato',
  'manual, cooling system': 'manual, refrigeración',
  'manual, cooling system: highest temperature': 'manual, refrigeración: mayor temperatura',
  'manual, starting; 3 to 5 minutes are usual': 'manual, arranque; lo usual son de 3 a 5 minutos',
  'manual, running in': 'manual, rodaje',
  'between idle and four fifths of the rated speed; common practice':
    'entre el ralentí y cuatro quintos del régimen nominal; práctica común',
  'manual, stopping the engine': 'manual, parada del motor',
  'manual, cooling system; 50 °C or less': 'manual, refrigeración; 50 °C o menos',
  'manual, fault codes': 'manual, códigos de avería',
  'wiring diagram; a socket with the marking J1939': 'esquema eléctrico; una toma con la marca J1939',
  'manual, after the first run': 'manual, tras la primera marcha',
  'your shop': 'su taller',

  // What things are called.
  'mode switch of the panel': 'selector de modo del cuadro',
  'output breaker of the set': 'disyuntor de salida del grupo',
  'gear lever at the helm': 'palanca de marchas en el timón',
  'clutch lever': 'palanca de embrague',
  'raw water cock': 'llave del agua de mar',
  'injector harness plug': 'enchufe del mazo de inyectores',
  'shut-off lever of the injection pump': 'palanca de corte de la bomba de inyección',
  'shut-off solenoid plug': 'enchufe del solenoide de corte',
  'fuel shut-off': 'corte del combustible',
  'shut-off lever, or the fuel cock': 'palanca de corte, o la llave de combustible',
  'oil pressure': 'presión de aceite',
  'coolant temperature': 'temperatura del refrigerante',
  'intake temperature': 'temperatura de admisión',
  'rail pressure': 'presión del conducto común',
  'crank speed': 'régimen del cigüeñal',
  'cam position': 'posición del árbol de levas',
  'boost pressure': 'presión de sobrealimentación',
  'red warning': 'aviso rojo',
  'amber warning': 'aviso ámbar',
  charging: 'carga',
  'wait to start': 'precalentamiento',
  'water in fuel': 'agua en el combustible',
  'exhaust manifold': 'colector de escape',
  'turbo clamps': 'abrazaderas del turbo',
  'coolant hose clamps': 'abrazaderas de las mangueras',
  'oil drain plug': 'tapón de vaciado de aceite',

  // Where a value comes from.
  plate: 'placa',
  manual: 'manual',
  measured: 'medido',
  seen: 'visto en el motor',
  computed: 'calculado',
  assumed: 'supuesto',
  'page {}': 'página {}',
  'accepted by {}': 'aceptado por {}',
  'In which cold it waits so long': 'Con qué frío espera tanto',
  'In deeper cold it would wait for more than {} s; allowed: a colder one, or a shorter wait.':
    'Con más frío esperaría más de {} s; se permite: una más fría, o una espera más corta.',
  'at the cold that is stated; the rest is its usual course':
    'con el frío indicado; lo demás sigue su curso habitual',
  'at idle and at rated speed; the rest follows': 'al ralentí y a la velocidad nominal; lo demás se deduce',
  'that it is run so; its times are usual': 'que se hace; los tiempos son los habituales',
  'from above the idle to four fifths of the rated speed':
    'desde por encima del ralentí hasta cuatro quintos de la velocidad nominal',
  'below {}': 'por debajo de {}',
  'above {}': 'por encima de {}',
  'Highest speed without load': 'Velocidad máxima sin carga',
  'what stops a runaway stays above what the governor allows':
    'lo que detiene un embalamiento queda por encima de lo que permite el regulador',
  'data plate, or manual, specifications: high idle':
    'placa, o manual, datos técnicos: velocidad máxima sin carga',
  'a tenth above the highest speed without load; common practice, no published source':
    'una décima parte sobre la velocidad máxima sin carga; práctica común, sin fuente publicada',
  '8 % above the rated speed: the droop of a governor; common practice, no published source':
    '8 % sobre la velocidad nominal: el estatismo del regulador; práctica común, sin fuente publicada',
  'It has to be from the rated speed, {} rpm, to {} rpm.':
    'Tiene que ir de la velocidad nominal, {} rpm, a {} rpm.',
  'the highest without load': 'la máxima sin carga',
  'So narrow a band is hardly ever read off; allowed: {} rpm from end to end, or more.':
    'Una banda tan estrecha casi nunca se lee; se permite: {} rpm de un extremo a otro, o más.',
  'not said where from': 'no se dice de dónde',
  'common practice, no published source': 'práctica común, sin fuente publicada',
  'as the profile is called': 'como se llama el perfil',
  '12 % above the rated speed; common practice, no published source':
    '12 % por encima del régimen nominal; práctica común, sin fuente publicada',
  '2 % below to 5 % above: the droop of a governor':
    'del 2 % por debajo al 5 % por encima: el estatismo de un regulador',
  'up to 150 rpm above the warm idle': 'hasta 150 rpm por encima del ralentí en caliente',
  '1 bar (15 psi) at idle; common practice, no published source':
    '1 bar (15 psi) al ralentí; práctica común, sin fuente publicada',
  '2.5 bar (36 psi) at rated speed; common practice, no published source':
    '2,5 bar (36 psi) al régimen nominal; práctica común, sin fuente publicada',
  'less than the 10 to 15 s that are usual; common practice, no published source':
    'menos que los 10 a 15 s usuales; práctica común, sin fuente publicada',
  '15W-40, with the usual data sheet': '15W-40, con la ficha usual',
  '12 K (22 °F) above its opening': '12 K (22 °F) por encima de su apertura',
  'two minutes show most leaks; common practice, no published source':
    'dos minutos enseñan casi todas las fugas; práctica común, sin fuente publicada',
  'SAE J300': 'SAE J300',
  '1.4 times the relief pressure': '1,4 veces la presión de alivio',
  'the second sweep': 'la segunda subida',
  'strokes of a primer may be left uncounted': 'los bombeos del cebador se pueden dejar sin contar',
  'only a vehicle steers by fluid': 'solo un vehículo tiene dirección con líquido',
  'a log of the bus over {} s': 'un registro del bus de {} s',

  // What is wrong with an answer.
  '"{}" is one thing too many; {words}': '«{}» sobra; {words}',
  'give one number.': 'dé un solo número.',
  'give two numbers, such as {}-{}.': 'dé dos números, como {}-{}.',
  '"{}" is none of these; give its number, 1 to {}.': '«{}» no es ninguno de estos; dé su número, de 1 a {}.',
  '"{}" may be where it comes from, or the end of its name; write "{}" or "{}".':
    '«{}» puede ser la fuente o el final del nombre; escriba «{}» o «{}».',
  '"{}" may be {}; give the number.': '«{}» puede ser {}; dé el número.',
  '"{}" is neither; answer yes or no.': '«{}» no es ninguno de los dos; responda sí o no.',
  'Give it a name.': 'Dele un nombre.',
  'That is {} letters long; {} are allowed.': 'Eso tiene {} letras; se permiten {}.',
  'It has to be a whole number.': 'Tiene que ser un número entero.',
  '{} is not allowed; from {} to {} is.': '{} no se permite; de {} a {}, sí.',
  '{} is not allowed; from {} to {} is: {words}.': '{} no se permite; de {} a {}, sí: {words}.',
  'no relief valve of a diesel opens later, and no bus shows more':
    'ninguna válvula de descarga de un diésel abre más tarde, y ningún bus muestra más',
  'it is called so when it is secured': 'se llama así cuando se asegura',
  'beside the engine: on the panel, at the helm, at the driven machine':
    'junto al motor: en el tablero, en el timón, en la máquina accionada',
  'it is called so when it is shut and opened': 'se llama así cuando se cierra y se abre',
  'between the inlet of the raw water and its pump': 'entre la toma de agua de mar y su bomba',
  'slower and faster engines are started by procedures of their own':
    'los motores más lentos o más rápidos se arrancan con otros procedimientos',
  'its speed is judged by it': 'su régimen se juzga por esto',
  'manual of the set: speed or frequency without load': 'manual del grupo: régimen o frecuencia en vacío',
  'so hot every winding may get, and none hotter': 'todo devanado aguanta eso, y ninguno más',
  'a limit for a frosty day allows no full crank on any other':
    'un límite para un día de helada no permite un giro completo en ningún otro',
  'a starter that has cranked is cool after minutes, not after seconds or hours':
    'un arranque que ha girado se enfría en minutos, no en segundos ni en horas',
  'with less it may not start, and a good one that has cranked shows no more':
    'con menos puede no arrancar, y una buena que ha girado no muestra más',
  'It has to be from {} to {}: a thermostat opens over {} to {}.':
    'Ha de ser de {} a {}: un termostato se abre a lo largo de {} a {}.',
  'An engine that is well would seem to lose its pressure at idle; allowed: {} or less.':
    'Un motor sano parecería perder su presión al ralentí; permitido: {} o menos.',
  'Above this floor no relief valve leaves room for the sweeps; allowed: {} or less.':
    'Por encima de este mínimo ninguna válvula deja sitio a las subidas; permitido: {} o menos.',
  'That is one number; {words}': 'Ese es un solo número; {words}',
  'The first has to be below the second; {words}': 'El primero tiene que ser menor que el segundo; {words}',
  'Name at least one, with commas between.': 'Nombre al menos uno, con comas.',
  'Those are {}; {} are allowed.': 'Son {}; se permiten {}.',
  '"{}" is too long; {} letters are allowed.': '«{}» es demasiado largo; se permiten {} letras.',
  'Name at least one, such as 15W-40.': 'Nombre al menos uno, como 15W-40.',
  '"{}" is no grade; allowed: one such as 15W-40, or 15W-40 110/14.5 with its data sheet.':
    '«{}» no es un grado; se permite uno como 15W-40, o 15W-40 110/14.5 con su ficha.',
  '{} is no multigrade of SAE J300; allowed: one such as 15W-40.':
    '{} no es un multigrado de SAE J300; se permite uno como 15W-40.',
  '{} has from {} up to {} mm2/s at 100 °C, not {}.': '{} tiene de {} a {} mm2/s a 100 °C, no {}.',
  '{} at 40 °C has to be more than twice as thick as at 100 °C, and 1000 mm2/s at most.':
    '{} a 40 °C tiene que ser más del doble de espeso que a 100 °C, y de 1000 mm2/s como mucho.',
  '{} may mean two things; write it without the comma.':
    '{} puede querer decir dos cosas; escríbalo sin coma.',
  '"{}" is no number; write it in figures, such as {}.':
    '«{}» no es un número; escríbalo en cifras, como {}.',
  '"{}" is no unit here; give the bare number.': '«{}» no es una unidad aquí; dé solo el número.',
  '"{}" is no unit here; allowed: {}.': '«{}» no es una unidad aquí; se permite: {}.',
  'It has to be above {}, as {words} is {}.': 'Tiene que ser más que {}, pues {words} es {}.',
  'the rated speed': 'el régimen nominal',
  'the thermostat fully open': 'el termostato del todo abierto',
  'that at idle': 'la del ralentí',
  'that of the winter fuel': 'el del combustible de invierno',
  'the least': 'el mínimo',
  '{words} of an engine of {} has to be from {} to {}.':
    '{words} de un motor de {} tiene que ser de {} a {}.',
  'The oil': 'El aceite',
  'The coolant': 'El refrigerante',
  '"{}" stands there twice; name each thing once.': '«{}» está dos veces; nombre cada cosa una vez.',
  '"{}" is nothing that a bus is read for; allowed: {}.':
    '«{}» no es nada de lo que se lee en un bus; se permite: {}.',
  'The coolant would boil after key off with this thermostat; allowed: a cap of {} or more.':
    'El refrigerante herviría al quitar el contacto con este termostato; se permite: un tapón de {} o más.',
  '{} cylinders make from {} to {}.': '{} cilindros hacen de {} a {}.',
  'It has to hold the rated speed, {} rpm.': 'Tiene que contener el régimen nominal, {} rpm.',
  'It has to be within 10 % of the rated speed, {} rpm.':
    'Tiene que estar a menos del 10 % del régimen nominal, {} rpm.',
  'It has to end below the speed at which it is stopped, {} rpm.':
    'Tiene que acabar por debajo del régimen al que se para, {} rpm.',
  'Below a rated speed of {} rpm that idle leaves no room for sweeps; allowed: a slower one.':
    'Bajo un régimen nominal de {} rpm ese ralentí no deja sitio a las subidas; se permite: uno más lento.',
  'A cold engine idles no slower than a warm one; allowed: from {} rpm.':
    'Un motor frío no gira más lento que uno caliente; se permite: desde {} rpm.',
  'Its fastest has to be from {} to {} rpm.': 'Su más rápido tiene que ser de {} a {} rpm.',
  'Below these floors it would be open at every speed; allowed: {} or more.':
    'Con estos mínimos estaría abierta a todos los regímenes; se permite: {} o más.',
  '{} stands there twice; name each grade once.': '{} está dos veces; nombre cada grado una vez.',
  'The least may be 55 % at most: tables of freezing end there.':
    'El mínimo puede ser del 55 % como mucho: las tablas de congelación acaban ahí.',
  'The most has to be 25 % or more: less stands no winter.':
    'El máximo tiene que ser del 25 % o más: menos no aguanta un invierno.',
  'Nothing stands behind the only filter, so what is poured in goes to the injection unfiltered; allowed: dry.':
    'Nada hay tras el único filtro, y lo que se echa llega a la inyección sin filtrar; se permite: en seco.',
  'Nothing stands behind the last filter, so what is poured in goes to the injection unfiltered; allowed: dry.':
    'Nada hay tras el último filtro, y lo que se echa llega a la inyección sin filtrar; se permite: en seco.',
  'The heater is waited for by a lamp; name it "{words}" among them.':
    'El calentador se espera por un testigo; nombre «{words}» entre ellos.',
  'The can has to hold at least as much glycol as the strongest mix, {} %.':
    'El bidón tiene que llevar al menos tanto glicol como la mezcla más fuerte, {} %.',
  'No grade that is allowed is so thick at {}; allowed: {} mm2/s or less.':
    'Ningún grado permitido es tan espeso a {}; se permite: {} mm2/s o menos.',
  'It has to be {} % or more, the least it moves.': 'Tiene que ser {} % o más, lo menos que mueve.',
  'The gauge has to reach beyond where the relief valve opens; allowed: {} or more.':
    'El manómetro ha de llegar más allá de donde abre la válvula; permitido: {} o más.',
  'It has to be from {} to {} s, the least and the longest warm-up.':
    'Tiene que ser de {} a {} s, el calentamiento mínimo y el más largo.',
  'It has to be above the warm idle, {} rpm, and no faster than the last sweep, {} rpm.':
    'Tiene que ser más que el ralentí en caliente, {} rpm, y no más que la última subida, {} rpm.',
  '"{}" stops the session when it is read out; call it otherwise, such as shut-off lever.':
    '«{}» detiene la sesión cuando se lee; llámelo de otro modo, como palanca de corte.',
  'In a cold shop the oil would hardly move; allowed: {} mm2/s or more.':
    'En un taller frío el aceite apenas se movería; se permite: {} mm2/s o más.',
  'In so few cranks no oil comes to the gauge; allowed: {} or more.':
    'En tan pocos accionamientos no llega aceite al manómetro; se permite: {} o más.',
  'It has to be from {} to {} of the oil that it holds.': 'Tiene que ser de {} a {} del aceite que lleva.',
  'An engine that is well would be given up; allowed: {} or more.':
    'Se dejaría un motor en buen estado; se permite: {} o más.',
  'On a hot day nobody could tell from the voltage whether it charges; allowed: less.':
    'En un día de calor nadie sabría por la tensión si carga; permitido: menos.',
  'The cranks that are allowed would be over before the oil is at the gauge; allowed: a faster pump, less to fill, or more cranks.':
    'Los accionamientos permitidos acabarían antes de que el aceite llegue al manómetro; se permite: una bomba más rápida, menos que llenar, o más accionamientos.',
  'Above this idle no relief valve leaves room for so much; allowed: {} or less.':
    'Sobre este ralentí ninguna válvula deja sitio a tanto; se permite: {} o menos.',
  'With this thermostat and cap it would always be said to boil; allowed: {} K or less.':
    'Con este termostato y este tapón siempre se diría que hierve; se permite: {} K o menos.',
  'No set runs so fast at one speed, and its speed could not be read; allowed: a rated speed of {} rpm or less.':
    'Ningún grupo gira tan deprisa a un solo régimen, y su régimen no se podría leer; se permite: un régimen nominal de {} rpm o menos.',

  // The talk at the keys.
  'Why: {words}. Where: {words}.': 'Por qué: {words}. Dónde: {words}.',
  'in {}': 'en {}',
  'Enter: {}': 'Intro: {}',
  'As put forward: {}': 'Propuesto: {}',
  yes: 'sí',
  no: 'no',
  'Found: {words}.': 'Se halla: {words}.',
  'Enter takes what is put forward. Behind a value you may say where it comes from: "15 qt p 12", "150 measured".':
    'Intro toma lo propuesto. Tras un valor puede decir de dónde viene: «15 L p 12», «150 medido».',
  'The source alone confirms what is put forward: "p 12", "plate", "manual", "measured", "seen", "assumed".':
    'La fuente sola confirma lo propuesto: «p 12», «placa», «manual», «medido», «visto», «supuesto».',
  '?  more about this one      -  nobody knows: taken as put forward, and marked assumed':
    '?  más sobre esto   -  nadie lo sabe: se toma lo propuesto, marcado supuesto',
  '<  back to the one before   < 12  back to number 12     list  all answers so far     quit  leave; nothing is lost':
    '<  volver a la anterior   < 12  al número 12   lista  todas las respuestas   salir  nada se pierde',
  'There is none before this one.': 'No hay ninguna antes de esta.',
  'Nothing can be put forward here: look, or ask the maker; quit leaves, and nothing is lost.':
    'Aquí no se puede proponer nada: mire, o pregunte al fabricante; quit sale, y nada se pierde.',
  'Has to be read or measured before its first fire: {words}.':
    'Hay que leerlo o medirlo antes de su primer arranque: {words}.',
  'Only assumed of {words}: {}.': 'Solo supuesto de {words}: {}.',
  'Supervisor: your name accepts that; Enter leaves it open.':
    'Supervisor: su nombre lo acepta; Intro lo deja pendiente.',
  'the limits of the starter': 'los límites del arranque',
  'the coolant': 'el refrigerante',
  'the heater': 'el calentador',
  'the idle': 'el ralentí',
  'A new engine. Have its data plate and the first pages of its manual at hand.':
    'Un motor nuevo. Tenga a mano su placa y las primeras páginas de su manual.',
  'Going on with {} answers from {}.': 'Se sigue con {} respuestas de {}.',
  'Left. Go on with: {}': 'Se ha salido. Para seguir: {}',
  'Written: {}, version {}, SHA-256 {}.': 'Escrito: {}, versión {}, SHA-256 {}.',
  'Of what was asked {} values are assumed, and {} more that nobody is asked for: {}':
    'De lo que se pregunta {} valores son supuestos, y {} más que nadie pregunta: {}',
  'All is answered. Numbers of what is to be answered again, such as 5, 12; Enter leaves all as it is.':
    'Todo está respondido. Números de lo que se responde de nuevo, por ejemplo 5, 12; Intro lo deja todo así.',
  'Give numbers from 1 to {}, or Enter.': 'Dé números de 1 a {}, o Intro.',
  'To change an answer: {}': 'Para cambiar una respuesta: {}',
  'Nothing was changed.': 'No se cambió nada.',
  'There is no answer {}; list shows them.': 'No hay respuesta {}; lista las muestra.',
  'Not yet fit for the first fire of a real engine: {}':
    'Aún no apto para el primer arranque de un motor real: {}',
  'Practise on it: {}': 'Practique con él: {}',
  'This one by the keys, please.': 'Esta por teclado, por favor.',
  '{words}. By the keys, please.': '{words}. Por teclado, por favor.',
  'Heard: {words}. Correct?': 'Oído: {words}. ¿Correcto?',
  '{}. Correct?': '{}. ¿Correcto?',
  'Not understood.': 'No entendido.',

  // The sheet of an engine.
  'The engine': 'El motor',
  Coolant: 'Refrigerante',
  Oil: 'Aceite',
  Fuel: 'Combustible',
  'How it is kept from firing': 'Cómo se impide que encienda',
  'Emergency cut-off': 'Corte de emergencia',
  'Oil by pump before it turns': 'Aceite por bomba antes de que gire',
  'Short first run': 'Primera marcha corta',
  'Intake heater or glow plugs': 'Calentador o bujías',
  Starter: 'Arranque',
  'Oil pump and galleries': 'Bomba de aceite y galerías',
  'Oil pressure': 'Presión de aceite',
  Idle: 'Ralentí',
  Charging: 'Carga',
  Thermostat: 'Termostato',
  'Warm-up': 'Calentamiento',
  Shutdown: 'Apagado',
  'Second person': 'Ayudante',
  'Vehicle bus': 'Bus del vehículo',
  'not said': 'no se dice',
  'An invented engine: for practice only.': 'Un motor inventado: solo para practicar.',
  'It is an invented engine: for practice only.': 'Es un motor inventado: solo para practicar.',
  '{} values are assumed.': '{} valores son supuestos.',
  'The procedure': 'El procedimiento',
  'Limits at {}, with a night of {}, at sea level': 'Límites a {}, con una noche de {}, a nivel del mar',
  'Coolant: {} of concentrate and {} of water, good to {}':
    'Refrigerante: {} de concentrado y {} de agua, bueno hasta {}',
  'It boils at: {}': 'Hierve a: {}',
  'Oil: {}': 'Aceite: {}',
  'Fuel, into a tank a tenth full: {} of No. 1 and {} of No. 2':
    'Combustible, en un depósito a una décima parte: {} de invierno y {} normal',
  'runs {} s, then drains {} s': 'marcha {} s, luego {} s para que el aceite baje',
  'blocks the start': 'impide el arranque',
  'may stay': 'puede quedar',
  'watched for {} s': 'vigilado durante {} s',
  'Oil pressure after cranking for: {} s at the earliest, {} s expected, given up after {} s':
    'Presión de aceite tras: {} s como pronto, {} s esperado, se deja tras {} s',
  'First crank: {} s at most': 'Primer accionamiento: {} s como mucho',
  'Heater: {words}': 'Calentador: {words}',
  'Battery at rest: {} V or more': 'Batería en reposo: {} V o más',
  'While cranking: {} V or more': 'Al accionar: {} V o más',
  'Charging: {} to {} V': 'Carga: de {} a {} V',
  'All values are the same.': 'Todos los valores son los mismos.',
  '{}: {} has to be read or measured before a real first fire; {words}.':
    '{}: {} hay que leerlo o medirlo antes de un primer arranque real; {words}.',
  '{}: {words} may stay assumed only where the supervisor accepts it by name; engine accept FILE --by NAME.':
    '{}: {words}: puede quedar supuesto solo si el supervisor lo acepta por su nombre; engine accept ARCHIVO --by NOMBRE.',
  'provenance: {} does not say where its values come from, so all of them count as assumed.':
    'provenance: {} no dice de dónde vienen sus valores, así que todos cuentan como supuestos.',
  '{}: every value is allowed, and they make a procedure.':
    '{}: todos los valores se permiten, y hacen un procedimiento.',
  'It is fit for a first fire.': 'Es apto para un primer arranque.',
  'rows have to be in rising order of {}': 'las filas tienen que ir por {} creciente',
  'points have to be in rising order of {}': 'los puntos tienen que ir por {} creciente',
  'has to be 5 or 6 speeds, or none with fixedSpeedRpm':
    'hacen falta 5 o 6 regímenes, o ninguno con fixedSpeedRpm',
  'has to be empty with fixedSpeedRpm': 'tiene que estar vacío con fixedSpeedRpm',
  'has to be left out with fixedSpeedRpm': 'no debe estar con fixedSpeedRpm',
  'has to hold the fixed speed, {}': 'tiene que contener el régimen fijo, {}',
  'speeds have to rise from one sweep to the next': 'los regímenes tienen que crecer de una subida a otra',
  'times have to rise from one look to the next': 'los tiempos tienen que crecer de una mirada a otra',
  'has to be at most {}': 'tiene que ser como mucho {}',
  'SPN {} FMI {} is judged twice': 'SPN {} FMI {} se juzga dos veces',
  'has to be from minS to maxS': 'tiene que estar entre minS y maxS',
  'has to be above the warm idle, {}': 'tiene que ser mayor que el ralentí en caliente, {}',
  'has to be among the speeds of the sweeps, not above them':
    'tiene que estar entre los regímenes de las subidas, no por encima',
  'names no lamp; lamps are {}': 'no nombra ningún testigo; los testigos son {}',
  '"{}" is used twice': '«{}» se usa dos veces',
  'is not in readings; list there what the bus gives': 'no está en readings; ponga ahí lo que da el bus',
  'has to list {} angles, the first of them 0': 'tiene que dar {} ángulos, el primero 0',
  'angles have to rise, all below {}': 'los ángulos tienen que crecer, todos por debajo de {}',
  'has to be above every idle and sweep, {}': 'tiene que ser mayor que todo ralentí y toda subida, {}',
  'list the filter "first", then, if there is one, "second"':
    'ponga el filtro «first», luego, si lo hay, «second»',
  'minRpm has to be below maxRpm': 'minRpm tiene que ser menor que maxRpm',
  'has to be below {}': 'tiene que ser menor que {}',
  'a name in camelCase letters and digits, such as oilPressure':
    'un nombre en letras y cifras, como oilPressure',
  'an SAE multigrade such as 15W-40': 'un multigrado SAE como 15W-40',
  'watchS is needed with judgement "watch" and allowed only there':
    'watchS va con el juicio «watch», y solo ahí',
  'goes only with "manual"': 'va solo con «manual»',
  'goes only with "assumed"': 'va solo con «assumed»',
  'the rule by which it was computed has to be named': 'la regla del cálculo tiene que nombrarse',
};
