import type { FindingSentences } from '../../record/index.ts';
import type { ReportWords } from './en.ts';
import { spanishSources } from './es-sources.ts';

const plural = (amount: number, one: string, many: string) => `${amount} ${amount === 1 ? one : many}`;

const findings: FindingSentences = {
  chain: {
    notOurs: () => 'Este archivo no es un registro de este programa.',
    torn: ({ line }) =>
      `La línea ${line} está cortada: la escritura se interrumpió; lo anterior (${plural(line - 1, 'línea', 'líneas')}) está intacto.`,
    altered: ({ line }) => `La línea ${line} fue alterada: su contenido no es el que dice su huella.`,
    clockBack: ({ line, monoMs, beforeMs }) =>
      `La línea ${line} va hacia atrás: su reloj continuo marca ${monoMs} ms, menos que los ${beforeMs} ms de la línea ${line - 1}.`,
    duplicated: ({ line, twinLine }) =>
      `La línea ${line} está duplicada: la misma entrada está en la línea ${twinLine}.`,
    renumbered: ({ line, seq }) =>
      `La línea ${line} fue añadida o reescrita: lleva el número ${seq}, que ya tiene la línea ${seq + 1}.`,
    putIn: ({ line, rightfulLine }) =>
      `La línea ${line} fue añadida: la entrada que va ahí está en la línea ${rightfulLine}.`,
    reordered: ({ line, rightfulLine }) =>
      `La línea ${line} está fuera de sitio: la entrada que va ahí está en la línea ${rightfulLine}.`,
    missing: ({ line, expected, seq }) =>
      `Antes de la línea ${line} ${seq - expected === 1 ? 'falta 1 entrada' : `faltan ${seq - expected} entradas`}: ahí debería estar el número ${expected}, y está el ${seq}.`,
    rehashed: ({ line }) =>
      `La línea ${line} fue alterada y su huella rehecha: la línea ${line + 1} se escribió tras otra línea ${line}.`,
    cutOff: ({ line }) =>
      `El registro acaba en la línea ${line - 1} sin la huella del informe: faltan líneas al final, o el informe es de otro registro.`,
  },
  remarks: {
    wallClockJump: ({ line, jumpS }) =>
      `En la línea ${line} el reloj del ordenador se ${jumpS > 0 ? 'adelantó' : 'atrasó'} ${Math.abs(jumpS).toFixed(1).replace('.', ',')} s.`,
    continued: ({ line, more }) =>
      `El informe se hizo en la línea ${line - 1}; el registro siguió después (${plural(more, 'línea', 'líneas')}).`,
  },
  signature: {
    otherKeyId: 'su clave no es la que dice su identificador',
    altered: 'fue alterada, o hecha con otra clave',
    otherRecord: 'se hizo para otro registro, o este registro fue alterado o continuado después',
  },
};

const ruleSentences: ReportWords['ruleSentences'] = {
  'plausible-range': 'El valor solo debe ser posible: se calcula con él.',
  'ashrae-ethylene-glycol':
    'La mezcla debe aguantar la noche más fría con su margen, sin ser más fuerte de lo que permite el fabricante.',
  'ashrae-propylene-glycol':
    'La mezcla debe aguantar la noche más fría con su margen, sin ser más fuerte de lo que permite el fabricante.',
  'oil-capacity': 'Entra tanto aceite como cabe en el motor.',
  'biodiesel-share': 'El combustible no lleva más biodiésel del que admite el motor.',
  'cranking-voltage-floor':
    'Mientras gira el arranque, la batería no baja de la tensión que corresponde a su temperatura.',
  'lead-acid-rest-voltage':
    'En reposo, la batería muestra la tensión de la carga pedida, y no más de lo que puede una batería de plomo.',
  'charging-window': 'El alternador mantiene la batería en su tensión de carga para esta temperatura.',
  'idle-trend': 'El ralentí está en su intervalo, sin oscilar ni derivar.',
  'idle-range': 'El ralentí está en su intervalo.',
  'idle-governed': 'Un motor que gira demasiado rápido al ralentí no está regulado, y se detiene.',
  'oil-pressure-floor':
    'La presión de aceite no está por debajo del mínimo para este régimen y esta temperatura del aceite.',
  'relief-valve-holds':
    'Donde la válvula de alivio sostiene la presión, lo que está por debajo sube hasta allí.',
  'oil-pressure-follows-speed': 'La presión de aceite sube con el régimen.',
  'coolant-boiling':
    'El refrigerante no está más caliente de lo que permite el motor, ni cerca de hervir aquí.',
  'thermostat-opens': 'El refrigerante ha llegado a donde abre el termostato.',
  'heat-soak-boil-margin':
    'Quitado el contacto, el calor que queda en el metal no hace hervir el refrigerante bajo su tapón.',
  'cap-cool-enough': 'Un tapón solo se abre cuando el refrigerante se ha enfriado.',
  'thermostat-regulates':
    'Caliente y sin carga, el refrigerante no está más caliente de lo que deja un termostato que funciona.',
  'idle-swing': 'El ralentí, seguido medio minuto, no oscila más de lo que puede.',
};

/** The frame of a report in Spanish, in the words of `prompts/es`: registro, sesión, lectura, pendiente. */
export const es: ReportWords = {
  locale: 'es-ES',
  firstOfMonth: '1',
  dateTime: '{date}, {time} UTC',
  unitGap: '\u00a0',
  quoted: '«{text}»',

  findings,
  via: {
    voice: 'por voz',
    keys: 'por teclado',
    touch: 'por toque',
    bus: 'por el bus del vehículo',
    tool: 'por la herramienta',
  },
  unclear: {
    nothingRecognized: 'una voz, pero ninguna palabra',
    outOfGrammar: 'no es respuesta a esta pregunta',
    lowConfidence: 'demasiado incierto',
    outOfRange: 'fuera de intervalo',
    tooLong: 'demasiado largo',
    farAway: 'demasiado lejos del micrófono',
    deniedAtReadBack: 'negado al repetirlo',
    contradicted: 'otro número que el repetido',
    notExpected: 'no esperado',
    notYetAsked: 'antes de la pregunta',
  },
  decisions: { blocks: 'bloquea', mayGoOn: 'se puede seguir', watch: 'vigilado hasta que desaparezca' },
  whyNotCarriedOut: {
    notAtEngine: 'quien llamó no está junto al motor',
    toolSpoke: 'la herramienta misma decía esa palabra',
  },
  why: {
    idleHunting: 'el ralentí oscila',
    idleFalling: 'el ralentí cae',
    idleRising: 'el ralentí sube',
    notCoolYet: 'aún caliente',
    coolOnce: 'frío en una sola lectura',
    pressureDoesNotFollow: 'no sigue al régimen',
    boilsAfterKeyOff: 'puede hervir al quitar el contacto',
    hotAfterRun: 'demasiado caliente para un termostato que funciona',
  },
  keyOwners: { bay: 'del puesto', supervisor: 'del jefe de taller' },
  triggers: {
    clock: 'se acabó el tiempo',
    reply: 'por una respuesta',
    value: 'por un valor',
    reading: 'por una lectura fuera de límites',
    unclear: 'sin respuesta clara a tiempo',
  },
  sources: spanishSources,
  ruleSentences,
  holdKinds: {
    hold: 'espera, al menos',
    rest: 'descanso del arranque, al menos',
    burst: 'arranque girando, como mucho',
    watch: 'vigilado, como mucho',
  },
  engineSpeed: 'régimen del motor',

  between: 'de {min} a {max}',
  atLeast: 'al menos {value}',
  atMost: 'como mucho {value}',
  margins: {
    toSpare: 'margen {amount}',
    tooLow: 'bajo en {amount}',
    tooHigh: 'excesivo en {amount}',
    beyond: 'fuera en {amount}',
    onLimit: 'en el límite',
    hardly: 'casi nada',
  },
  onDevice: '{means}, en el aparato {device}',

  title: 'Primer arranque: informe',
  fileTitle: 'Primer arranque: {vehicle}',
  unknownVehicle: 'vehículo desconocido',
  recordFoot: 'Registro {hash}',
  page: 'Página {page} de {of}',
  lettersLacking:
    'Algunas letras de arriba salen como recuadros: la fuente de este PDF no las tiene. El informe HTML las muestra.',
  invented: 'El motor de este informe es inventado, para practicar.',

  rehearsal: 'Un ensayo: un modelo hizo de motor.',

  trust: {
    altered: 'NO VERIFICADO: este registro no está como se escribió. {fault}',
    noEntry: 'No contiene ninguna entrada completa.',
    onlyBefore: {
      one: 'El informe muestra solo {n} entrada, anterior al fallo. No prueba nada de lo que sigue.',
      many: 'El informe muestra solo las {n} entradas anteriores al fallo. No prueba nada de lo que sigue.',
    },
    notVerified: 'NO VERIFICADO: {sentence}',
    notConfirmed: 'NO CONFIRMADO: {fault}',
    verified: {
      one: 'Verificado: la única entrada está encadenada como se escribió.',
      many: 'Verificado: las {n} entradas están encadenadas como se escribieron.',
    },
    verifiedAndSigned: {
      one: 'Verificado: la única entrada está encadenada como se escribió, y firmada con la clave {owners}.',
      many: 'Verificado: las {n} entradas están encadenadas como se escribieron, y firmadas con la clave {owners}.',
    },
    and: ' y ',
    signatureFails: 'La firma {owner} (clave {keyId}) no vale: {why}.',
  },

  replay: {
    noHeader: 'El registro no empieza como una sesión de esta versión, así que nada de él se pudo repetir.',
    impossible: 'El procedimiento no se puede repetir a partir de este registro: {why}',
    differs:
      'Repetidos, los hechos del registro no llevan a la línea {line}: {what}. O lo escribió otra versión del procedimiento, o fue alterado y encadenado de nuevo.',
    passedUnmet:
      'En la línea {line} se da por cumplida la condición «{gate}» en {step}, aunque según el juicio anterior el límite no se cumplía.',
    nothingFollows: 'de ellos no sale ningún «{recorded}»',
    otherState: 'llevan a {leads}, no a {recorded}',
    otherNote: 'llevan a «{leads}», no a «{recorded}»',
    otherMember: 'su {member} es otro',
    otherOutcome: 'llevan a {leads}, no a «{recorded}»',
    noteLacking: 'antes debería estar «{leads}»',
    olderVersion:
      'Una versión anterior de este programa escribió el registro (vocabulario {version}), con otro procedimiento: se cuenta como está, sin repetirlo.',
    newerVersion:
      'Una versión más nueva de este programa escribió el registro (vocabulario {version}); haga allí el informe.',
  },

  outcome: {
    unconfirmed: 'Según el registro, sin confirmar: {text}',
    nothing: 'No pasó nada: el registro no contiene ningún paso de un arranque.',
    signedOff: 'Firmado tras {time}: {facts}.',
    allGatesMet: { one: '{n} condición cumplida, de {n}', many: 'las {n} condiciones cumplidas' },
    gatesNotMet: { one: '{n} condición SIN cumplir', many: '{n} condiciones SIN cumplir' },
    onlyDrills: 'ninguna parada salvo ensayos',
    stops: { one: '{n} parada', many: '{n} paradas' },
    nothingOpen: 'nada pendiente',
    openItems: { one: '{n} pendiente', many: '{n} pendientes' },
    ended: 'Terminado sin firma tras {time}, {place}{cause}. {ran}',
    stopped: 'Detenido sin seguir tras {time}, {place}{cause}. {ran}',
    brokenOff: 'Sin terminar: el registro se interrumpe tras {time}, {place}. {ran}',
    beforeFirstStep: 'antes del primer paso',
    inPhase: 'en la fase {n} de {of}, {phase}',
    cause: ': {cause}',
    noCause: 'no se dio ninguna causa',
    ranUnknown: 'No se puede saber si el motor giró.',
    turnedUnexpectedly: 'Se leyó un régimen, pero en ningún paso en que el motor gire.',
    didNotRun: 'El motor no giró.',
    ranFor: 'El motor giró {time}.',
  },

  glance: {
    ran: 'Motor en marcha',
    ranUnknown: 'no se puede saber',
    ranFrom: '{time}, desde {from}',
    ranNowhere: 'en ningún paso',
    gates: 'Condiciones cumplidas',
    gatesOf: '{met} de {all}',
    stops: 'Paradas',
    stopsAndDrills: { one: '{stops} (y {n} ensayo)', many: '{stops} (y {n} ensayos)' },
    faults: 'Códigos de avería',
    skips: 'Pasos omitidos',
    misheard: 'No entendido a la primera',
    openItems: 'Pendientes',
    signature: 'Firma',
    signatureProved: 'probada',
    signatureUnproved: 'sin probar',
  },

  job: {
    unknown:
      'El registro no empieza como una sesión de esta versión: no se puede saber vehículo, personas ni perfil del motor.',
    vehicle: 'Vehículo',
    engine: 'Motor',
    profile: 'Perfil',
    inventedProfile: '{name} (inventado, para practicar)',
    began: 'Comienzo',
    lasted: 'Duración',
    lastedTime: '{time} ({clock})',
    details: {
      serial: 'Número de serie o VIN',
      hours: 'Horas',
      oilUsed: 'Aceite usado',
      coolantUsed: 'Refrigerante usado',
      filterParts: 'Referencias de los filtros',
    },
  },

  origins: {
    title: 'De dónde vienen los valores del motor',
    count: '{n} {from}',
    from: {
      plate: 'de la placa',
      manual: 'del manual de taller',
      measured: 'medidos',
      seen: 'vistos en el motor',
      computed: 'calculados',
      assumed: 'supuestos',
    },
    none: 'No se supuso nada.',
    assumed: 'supuesto: {name}',
    accepted: 'supuesto: {name}, aceptado por {by}',
  },

  timeLine: {
    title: 'Desarrollo',
    note: 'Tiempo de la sesión. Motor: ámbar mientras lo giraba el arranque, verde en marcha.',
    alt: '{reached} de {all} fases en {time}.',
    notReached: 'no alcanzada',
    engine: 'Motor girado y en marcha',
    stops: 'Paradas (huecas: ensayos)',
    held: 'En pausa',
    restarted: 'Herramienta reiniciada',
  },

  open: {
    title: 'Pendientes',
    gate: 'Condición sin cumplir: {gate}',
    gates: '{n} condiciones sin cumplir: {gates}',
    skip: 'Omitido: {step} ({reason})',
    fault: 'Código aceptado por el jefe de taller: SPN {spn} FMI {fmi} ({reason})',
    reopened: 'Hay que repetir: {step}',
    left: 'Queda pendiente: {step}',
    leftWith: 'Queda pendiente: {step} ({what})',
    barred: 'No se debe arrancar: {why}',
    none: 'No queda nada pendiente.',
    noneConfirmed: 'El registro no nombra ninguno; no se pudo confirmar.',
    retorque: 'Lista de reapriete',
    retorqueNote: {
      one: '{done} de {n} punto confirmado, en frío.',
      many: '{done} de {n} puntos confirmados, en frío.',
    },
    torqued: '{name}: apretado al par',
    notTorqued: '{name}: PENDIENTE',
  },

  gates: {
    title: 'Condiciones y lecturas',
    note: 'Las horas son tiempo de sesión. Los números entre corchetes nombran la regla, más abajo.',
    none: 'No se alcanzó ninguna condición.',
    reading: 'Lectura',
    at: 'Cuándo',
    value: 'Valor',
    limit: 'Límite',
    margin: 'Margen',
    rule: 'Regla',
    holdUp: 'Lecturas que detienen el trabajo',
    holdUpNote:
      'No abren ninguna condición; el trabajo siguió solo cuando estaban en sus límites, o se detuvo.',
    figures: 'Cifras para los cálculos',
    figuresNote: 'Tiempo, lugar y cantidades: de ellos salen los límites.',
    proved: 'Probado: {list}.',
    provedBy: '{person} {means} a las {time}',
    held: 'comparado con el límite: {value}',
    met: 'cumplida a las {time}, {person}',
    notMet: 'SIN CUMPLIR',
    confirmed: 'Confirmado: {steps}.',
    missing: 'Falta: {steps}.',
    severalAlike: '{n} lecturas, todas {value}',
    several: '{n} lecturas, de {lowest} a {highest}',
    moreOutside: {
      one: '{n} lectura más fuera de límites; todas están en los archivos JSON y CSV',
      many: '{n} lecturas más fuera de límites; todas están en los archivos JSON y CSV',
    },
    notAccepted: '{quantity}: valor NO aceptado',
    notAcceptedWhy: '{quantity}: valor NO aceptado, {why}',
  },

  plots: {
    title: 'Lecturas en el tiempo y sus límites',
    none: 'No se hizo ninguna lectura.',
    note: 'A trazos: límites; fondo rojo: fuera de ellos. Franjas al fondo: fases, por su número en el desarrollo.',
    once: 'Leído una vez: la barra gris es lo que permiten los límites',
    valueAt: '{value} a las {time}',
    labelled: '{label}: {text}',
    quantityIn: '{quantity}, {unit}',
    alt: { one: '{quantity}: {n} lectura', many: '{quantity}: {n} lecturas' },
    altAllInside: '{readings}, ninguna fuera de los límites.',
    altOutside: '{readings}, {bad} fuera de los límites.',
    pressure: 'Presión de aceite ({unit}) según el régimen ({speedUnit})',
    pressureAlt: {
      one: 'Presión de aceite a {n} régimen, con la presión mínima admitida.',
      many: 'Presión de aceite a {n} regímenes, con la presión mínima admitida en cada uno.',
    },
  },

  stops: {
    title: 'Paradas y sus causas',
    none: 'Nadie pidió parar.',
    step: 'Paso',
    called: 'Pedida',
    cause: 'Momento y causa',
    after: 'Después',
    onlyDrills: 'Nadie pidió parar, salvo para practicar.',
    head: '{time}: {cause}',
    inStep: 'Paso: {step}. Pedida: {called}.',
    byReading: '{quantity} {value}, límite {limit}',
    renamed:
      'La sesión encontró: {found}. Después se dijo: {cause}. Lo que {found} pone en duda se hizo otra vez de todos modos.',
    drills: { one: '{n} ensayo de emergencia', many: '{n} ensayos de emergencia' },
    byBus: 'la propia sesión, por el bus del vehículo',
    by: '{person}, {via}',
    noCause: 'no dada',
    drillHeard: 'recibida; siguió a las {time}',
    wentOn: 'siguió a las {time}',
    notGoneOn: 'no se siguió',
    again: 'Hay que repetir: {steps}.',
  },

  doubts: {
    title: 'Puesto en duda por poco posible',
    note: 'Lo que no podía ser verdad por lo ya sabido no se tomó de la palabra de una sola persona.',
    said: 'Dicho o indicado',
    expected: 'Lo que podía ser',
    became: 'Qué fue de ello',
    value: '{what}, {value}',
    notTaken: 'no tomado',
    vouched: 'tomado: lo leyó también: {person}',
  },

  faults: {
    title: 'Códigos de avería',
    none: 'No se leyó ningún código de avería.',
    code: 'Código',
    what: 'Qué es',
    story: 'Historia',
    judged: '{time} {step}: {decision}',
    accepted: '{time} aceptado por el jefe de taller: {reason}',
    cleared: '{time} dado por desaparecido',
    endUnknown: 'no se puede saber si estaba al final',
    atEnd: 'no se leyó como desaparecido al final',
    gone: 'no estaba entre los códigos de la última ronda',
  },

  skips: {
    title: 'Pasos omitidos',
    none: 'No se omitió ningún paso.',
    reason: 'Motivo',
    by: 'Por',
  },

  misheard: {
    title: 'Mal entendido y corregido',
    none: 'Todo se entendió a la primera.',
    heard: 'Recibido',
    why: 'Por qué no contó',
    repairedBy: 'Lo que contó entonces',
    nothingHeard: '(nada)',
    folded: { one: '{n} vez, {repaired}.', many: '{n} veces, {repaired}.' },
    allRepaired: 'corregido cada vez en el mismo paso',
    notRepaired: {
      one: '{n} sin nada que contara después',
      many: '{n} sin nada que contara después',
    },
    repaired: '{text} a las {time}',
    nothing: 'nada',
  },

  ear: {
    title: 'El motor de oído',
    note: 'Lo que el micrófono oyó del motor. Nada se juzga por ello, y su silencio no dice nada del motor.',
    speed: 'Régimen de oído, {unit}; cada cambio, y dos veces por minuto lo que sigue igual',
    alt: { one: '{n} régimen de oído.', many: '{n} regímenes de oído.' },
    happened: 'Oído',
    at: 'Régimen',
    microphone: 'Por el aparato',
    what: {
      cranking: 'Girado por el arranque',
      fired: 'Arrancó',
      running: 'En marcha',
      stalled: 'Calado',
      lost: 'Ya no se oye',
      hunting: 'Oscila {swing} a cada lado, cada {period} s',
      overspeed: 'Demasiado rápido: avisado',
      changed: 'Suena de otro modo que en su primer minuto: {db} dB entre {from} y {to} Hz',
    },
  },

  voices: {
    title: 'Quién habló',
    note: 'Una voz se compara con lo que su dueño dijo antes en esta sesión. Puede hacer rechazar una respuesta, nunca concederla. De ninguna voz se guardó nada.',
    person: 'Preguntado',
    answers: 'Respuestas habladas',
    own: 'Con su voz',
    others: 'Con otra voz',
    unsure: 'No es seguro',
    refused: {
      one: '{n} respuesta fue rechazada: se pidió al ayudante y llegó con la voz del técnico.',
      many: '{n} respuestas fueron rechazadas: se pidieron al ayudante y llegaron con la voz del técnico.',
    },
    folded: {
      one: '{n} respuesta hablada, de quién y con qué voz.',
      many: '{n} respuestas habladas, de quién y con qué voz.',
    },
    said: 'Dicho',
    askedOf: 'Preguntado a',
    voice: 'Voz',
    notSure: 'no es seguro',
    neither: 'ninguno de los dos',
    notTaken: '{voice}: no se tomó',
  },

  besideOthers: {
    title: 'Junto a los arranques anteriores de este motor en este taller',
    note: 'Solo se dice: nada depende de ello, ningún paso se abre ni se cierra por ello.',
    value: 'Este arranque',
    usual: 'Habitual aquí',
    place: 'Entre ellos',
    middle: 'por debajo de {above}, por encima de {below} de {all}',
    unlike: 'distinto de ellos: por debajo de {above}, por encima de {below} de {all}',
  },

  holds: {
    title: 'Esperas y arranque, previsto y cumplido',
    unknown: 'No se puede saber: el registro no se deja repetir.',
    none: 'No se midió ningún tiempo.',
    what: 'Qué',
    planned: 'Previsto',
    took: 'Duró',
    paused: 'Pausa',
    onHold: '{time} en pausa',
    brokenOff: 'interrumpido',
    overLimit: 'sobre su límite',
  },

  computed: {
    title: 'Cifras calculadas para este motor y este tiempo',
    shown: 'Como se mostró',
  },

  cautions: {
    title: 'Avisos de seguridad dados',
    none: 'No se dio ningún aviso.',
    note: 'En negrita: avisos que pasaron por delante de todo lo demás.',
    said: 'Dicho',
    times: 'Veces',
  },

  tool: {
    title: 'Notas sobre la herramienta y el registro',
    what: 'Qué',
    refused: '{step}: denegado; falta: {gates}.',
    notCarriedOut: 'Llamada de auxilio de {device} ({person}), {cause}: sin efecto; {why}.',
    notUnderstood: {
      one: '{n} entrada del registro no se pudo entender y no se muestra; es la número {first}.',
      many: '{n} entradas del registro no se pudieron entender y no se muestran; la primera es la número {first}.',
    },
  },

  tables: {
    at: 'Cuándo',
    step: 'Paso',
    between: '; ',
    more: 'Y {n} más; todo está en el archivo JSON.',
  },

  rules: { title: 'Reglas de los límites', rule: '[{n}] {sentence} Fuente: {source}.' },

  foot: {
    title: 'Firmas',
    signedOnDevice: 'Firmado por {name} en el aparato del jefe de taller, {device}, a las {time}.',
    signedByKey: 'Firmado por {name} a las {time}, y con la clave del jefe de taller.',
    signedUnproved:
      '«Firmo» se respondió en nombre de {name} a las {time}. SIN PROBAR: no vino del aparato del jefe de taller ni de su clave. Firme a mano arriba, o con: npm start -- sign REGISTRO --role supervisor --key ARCHIVO',
    valid: 'Firma digital (Ed25519) {owner}, clave {keyId}, {at}: válida.',
    lastHash:
      'SHA-256 de la última entrada. Para hallar todo cambio posterior, también líneas cortadas al final, ejecute: npm start -- verify REGISTRO --hash seguido de',
    lastSoundHash: 'SHA-256 de la última entrada intacta; lo que la sigue en el archivo está SIN VERIFICAR',
  },
};
