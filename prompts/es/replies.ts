/**
 * What may be answered, by touch or typed; the first wording is the one that is shown and read back. No two that mean
 * opposite things differ in one short word only, as in the languages that are heard: an ear may come.
 */
export const replies = {
  yes: ['correcto', 'sí', 'afirmativo'],
  no: ['falso', 'no', 'eso es falso', 'negativo'],
  ready: ['listos', 'estamos listos', 'todo listo'],
  notYet: ['todavía no', 'no está bien', 'problema'],

  cardRight: ['ficha correcta', 'la ficha es correcta'],
  understood: ['entendido', 'lo he entendido'],
  protectionOn: ['protección puesta', 'la protección está puesta'],
  airGood: ['ventilación bien', 'extracción en marcha'],
  extinguisherReady: ['extintor a mano', 'el extintor está aquí'],
  vehicleSecured: ['vehículo calzado', 'el vehículo está calzado'],
  lockedOut: ['arranque bloqueado', 'el arranque está bloqueado'],
  breakerOpen: ['interruptor abierto', 'el interruptor está abierto'],
  inNeutral: ['palanca en neutral', 'la palanca está en neutral'],
  uncoupled: ['máquina desacoplada', 'la máquina está desacoplada'],
  cutOffReady: ['corte conocido', 'el corte está listo'],
  thatWasTheDrill: ['era el ensayo', 'ensayo'],

  mixReady: ['mezcla hecha', 'la mezcla está hecha'],
  coolantFull: ['circuito lleno', 'el circuito está lleno'],
  jacketHeaterOff: ['calefactor apagado', 'el calefactor está apagado'],
  noMoreAir: ['purga terminada', 'ya no sale aire'],
  gradeRight: ['aceite adecuado', 'el aceite es el adecuado'],
  filterFitted: ['filtro montado', 'el filtro está montado'],
  levelGood: ['nivel correcto', 'el nivel es correcto'],
  levelLow: ['falta aceite', 'el aceite está bajo'],
  levelRisen: ['el aceite ha subido', 'el nivel ha subido'],
  asBefore: ['como antes', 'igual que antes'],
  fuelRight: ['combustible adecuado', 'el combustible es el adecuado'],
  steeringFull: ['dirección llena', 'la dirección está llena'],
  primerFirm: ['cebador duro', 'el cebador está duro'],
  screwedHome: ['cebador enroscado', 'el cebador está enroscado'],
  noWeeps: ['nada rezuma', 'todo seco'],

  pluggedIn: ['enchufado', 'conectado'],
  hosesGood: ['mangueras bien', 'las mangueras están bien'],
  bootsGood: ['manguitos bien', 'los manguitos están bien'],
  beltsGood: ['correas bien', 'las correas están bien'],
  toolsOut: ['sin herramientas olvidadas', 'las herramientas están fuera'],
  wiringGood: ['cableado bien', 'el cableado está bien'],
  fastenersMarked: ['tornillería marcada', 'la tornillería está marcada'],

  valveClosed: ['válvula cerrada', 'la válvula está cerrada'],
  strainerClean: ['filtro de mar limpio', 'el filtro de mar está limpio'],
  waterFlows: ['sale agua', 'el agua sale'],
  staysDry: ['escape seco', 'el escape sigue seco'],
  regenerationOff: ['regeneración anulada', 'la regeneración está anulada'],

  starterIsolated: ['arranque aislado', 'el motor de arranque está aislado'],
  prelubeDone: ['aceite bombeado', 'el aceite está bombeado'],
  turboFed: ['turbo aceitado', 'el turbo está aceitado'],
  oilFed: ['los dos aceitados', 'galerías y turbo aceitados'],
  turnsFree: ['gira libre', 'el motor gira libre'],
  itBinds: ['se atasca', 'algo se atasca'],
  barringToolOut: ['barra retirada', 'la barra está retirada'],

  fuellingDisabled: ['inyección anulada', 'la inyección está anulada'],
  provedOff: ['anulación comprobada', 'está comprobado'],
  clearToCrank: ['zona despejada', 'la zona está despejada'],
  noTester: ['sin probador', 'no hay probador'],
  inManual: ['modo manual', 'está en modo manual'],
  oilPressureShows: ['la presión sube', 'tenemos presión', 'presión de aceite'],
  nothingYet: ['todavía nada', 'sin presión', 'no arranca'],
  fuellingRestored: ['inyección restablecida', 'la inyección está restablecida'],

  lit: ['encendido', 'está encendido'],
  dark: ['apagado', 'está apagado'],
  lampOut: ['testigo apagado', 'el testigo se ha apagado'],
  lampStays: ['testigo encendido', 'sigue encendido'],
  noCodes: ['ningún código', 'no hay códigos'],
  readACode: ['leer un código', 'otro código'],
  noMoreCodes: ['no hay más códigos', 'eso es todo'],
  acceptFault: ['el jefe lo acepta', 'avería aceptada'],

  fired: ['ha arrancado', 'el motor ha arrancado', 'arrancó'],
  pressureGood: ['presión correcta', 'la presión es correcta', 'presión de aceite correcta'],
  noOilPressure: ['sin presión', 'sin presión de aceite'],
  faultCleared: ['avería desaparecida', 'la avería ha desaparecido'],

  hunting: ['el ralentí oscila', 'oscila'],
  pointGood: ['todo bien aquí', 'seco y apretado'],
  stillLooking: ['todavía no', 'sigo mirando'],
  somethingWrong: ['problema', 'no está bien'],
  leak: ['hay una fuga', 'fuga'],
  weep: ['solo rezuma', 'rezuma un poco'],
  spray: ['sale un chorro', 'chorro'],
  valveNoise: ['ruido de válvulas', 'suenan las válvulas'],
  knocking: ['golpeteo', 'golpea'],
  squealing: ['chirrido', 'chirría'],
  whiteSmoke: ['humo blanco', 'el humo es blanco'],
  blueSmoke: ['humo azul', 'el humo es azul'],
  blackSmoke: ['humo negro', 'el humo es negro'],
  thickSmoke: ['humo espeso', 'el humo es espeso'],
  leaveOpen: ['dejar pendiente', 'queda pendiente'],
  thermostatOpen: ['termostato abierto', 'la manguera superior está caliente'],
  noBubbles: ['ninguna burbuja', 'ya no hay burbujas'],
  levelsGood: ['niveles correctos', 'los niveles son correctos'],
  stillRunning: ['sigue girando', 'el motor sigue girando'],
  engineOff: ['motor apagado', 'el motor está apagado'],
  torqued: ['apretado al par', 'apriete hecho'],
  handedBack: ['todo devuelto', 'está todo devuelto'],
  itemsNoted: ['pendientes anotados', 'anotado'],
  iSign: ['firmo', 'yo firmo'],

  allOff: ['todo apagado', 'motor y contacto apagados'],
  endSession: ['terminar la sesión', 'lo dejamos por hoy'],
  causeFalseAlarm: ['falsa alarma'],
  causeCoolantLeak: ['fuga de refrigerante'],
  causeCoolantInCylinder: ['refrigerante en un cilindro', 'agua en un cilindro'],
  causeOilLeak: ['fuga de aceite'],
  causeFuelLeak: ['fuga de combustible'],
  causeNoOilPressure: ['sin presión de aceite'],
  causeNoStart: ['el motor no arranca', 'no quiere arrancar'],
  causeOverspeed: ['embalamiento', 'el motor se embaló'],
  causeOverheating: ['sobrecalentamiento', 'demasiado caliente'],
  causeFaultCode: ['código de avería'],
  causeSmokeOrFire: ['humo o fuego', 'humo', 'fuego'],
  causeSomeoneHurt: ['alguien está herido', 'herido'],
  causeKnocking: ['golpeteo', 'golpea'],
  causeLooseOrNoise: ['algo suelto', 'ruido extraño'],
  causeOther: ['otra causa', 'otra cosa'],

  oneByOne: ['uno por uno', 'de uno en uno'],
  mixedAndFull: ['refrigerante mezclado y lleno', 'el refrigerante está mezclado y lleno'],
  bottlesGood: ['sin aire y dirección llena', 'ya no hay aire y la dirección está llena'],
  gradeAndFilterRight: ['grado y filtro correctos', 'grado y filtro son correctos'],
  /** Of older records. */
  steeringAndLevels: ['sin burbujas y niveles correctos', 'ninguna burbuja y los niveles son correctos'],
  fuelAndFiltersRight: ['combustible y filtros correctos', 'combustible y filtros son correctos'],
  soundAndSmoke: ['ruido y humo normales', 'ruido y humo son normales'],
  bootsSoundSmell: ['manguitos ruido y olor normales', 'manguitos ruido y olor son normales'],
  coldFull: ['refrigerante y dirección llenos', 'refrigerante y dirección están llenos'],
  primerDone: ['cebador duro y enroscado', 'el cebador está duro y enroscado'],
  frontGood: ['mangueras manguitos y correas bien', 'mangueras manguitos y correas están bien'],
  wiringAndFasteners: ['cableado y tornillería bien', 'cableado y tornillería están bien'],
  firstSensors: ['primeros sensores enchufados', 'los primeros sensores están enchufados'],
  secondSensors: ['sensores siguientes enchufados', 'los sensores siguientes están enchufados'],
  thirdSensors: ['terceros sensores enchufados', 'los terceros sensores están enchufados'],
  fourthSensors: ['últimos sensores enchufados', 'los últimos sensores están enchufados'],
  firstLamps: ['primeros testigos como se dice', 'los primeros testigos están como se dice'],
  secondLamps: ['testigos siguientes como se dice', 'los testigos siguientes están como se dice'],
  thirdLamps: ['últimos testigos como se dice', 'los últimos testigos están como se dice'],
  firstLampsRunning: [
    'primeros testigos ahora como se dice',
    'los primeros testigos están ahora como se dice',
  ],
  secondLampsRunning: [
    'testigos siguientes ahora como se dice',
    'los testigos siguientes están ahora como se dice',
  ],
  thirdLampsRunning: ['últimos testigos ahora como se dice', 'los últimos testigos están ahora como se dice'],
  firstTorqued: ['primeros apretados al par', 'los primeros están apretados al par'],
  secondTorqued: ['siguientes apretados al par', 'los siguientes están apretados al par'],
  thirdTorqued: ['últimos apretados al par', 'los últimos están apretados al par'],
  notMeasured: ['no se midió', 'sin medir'],

  reasonNotFitted: ['no equipado'],
  reasonDoneBefore: ['hecho antes', 'ya hecho'],
  reasonSupervisor: ['orden del jefe', 'lo ordena el jefe'],
} as const satisfies Record<string, readonly [string, ...string[]]>;

/**
 * Typed, each stops everything, from anybody, in every state. "Para" alone is none: it is also the commonest
 * preposition.
 */
export const stopWordings = [
  'stop',
  'stop stop',
  'alto',
  'alto ya',
  'paren',
  'paren ya',
  'pare el motor',
  'paren el motor',
  'apaguen el motor ya',
  'parada de emergencia',
] as const;

/** What stands for the reply that is asked for, by keys and touch. */
export const affirmatives = ['sí', 'de acuerdo', 'vale', 'ok', 'hecho', 'bien', 'correcto'] as const;

/** Words that are always understood; which of them do something depends on the moment. */
export const controls = {
  hold: ['pausa', 'un momento', 'espera'],
  continue: ['continuar', 'seguimos', 'adelante'],
  sayAgain: ['repetir', 'repite', 'otra vez'],
  goBack: ['volver atrás', 'paso anterior'],
  takeBack: ['falso', 'eso es falso'],
  skip: ['omitir', 'omitir este paso'],
  status: ['situación', 'dónde estamos'],
  timeLeft: ['tiempo restante', 'cuánto falta'],
  help: ['ayuda', 'qué puedo responder'],
} as const satisfies Record<string, readonly [string, ...string[]]>;

/** What is taken for a control word at the keys as well, and sounds too much like another to be listened for. */
export const typedControls = { skip: [], status: [] } as const satisfies Partial<
  Record<keyof typeof controls, readonly string[]>
>;
