import { bySentence } from '../../../prompts/by-sentence.ts';
import type { BySentence } from '../../../prompts/types.ts';

/**
 * What the laptop and the parts of this page refuse or report, in the other languages of the page: by the very words in
 * which it comes, `{}` standing for what changes. What stands nowhere here is shown as it came, in English.
 * `tests/tablet/refusals.test.ts` finds every such sentence of the server in its source.
 */
export interface InOtherWords {
  readonly fr: string;
  readonly es: string;
}

export const refusals: Readonly<Record<string, InOtherWords>> = {
  'This connection has not said whose it is and is closed; come again.': {
    fr: "Cette connexion n'a pas dit à qui elle est, et elle est fermée ; revenez.",
    es: 'Esta conexión no ha dicho de quién es y está cerrada; vuelva.',
  },
  'There is no connection to the laptop: that was not sent.': {
    fr: "Pas de connexion à l'ordinateur : cela n'a pas été envoyé.",
    es: 'No hay conexión con el portátil: eso no se envió.',
  },
  'The laptop has not acknowledged what was given last; see what is asked, then answer again.': {
    fr: "L'ordinateur n'a pas confirmé ce qui a été donné en dernier ; voyez ce qui est demandé, puis répondez encore.",
    es: 'El portátil no ha confirmado lo último que se dio; vea lo que se pregunta y responda otra vez.',
  },
  'A clear is not asked for now.': {
    fr: "Personne ne demande si la zone est dégagée pour l'instant.",
    es: 'Ahora nadie pregunta si la zona está despejada.',
  },
  'A record is sent as application/x-ndjson, line by line.': {
    fr: "Un dossier s'envoie en application/x-ndjson, ligne par ligne.",
    es: 'Un registro se envía como application/x-ndjson, línea por línea.',
  },
  'That device is let go of, but the laptop cannot keep that: make room on its disk before it is started anew.':
    {
      fr: "Cet appareil est dissocié, mais l'ordinateur ne peut pas le noter : faites de la place sur son disque avant de le redémarrer.",
      es: 'Ese dispositivo queda desvinculado, pero el portátil no puede anotarlo: libere espacio en su disco antes de reiniciarlo.',
    },
  'A session that ran here was lost: say first that its engine is off and all is safe.': {
    fr: "Une séance d'ici est perdue : dites d'abord que son moteur est coupé et que tout est sûr.",
    es: 'Una sesión de aquí se ha perdido: diga primero que su motor está apagado y todo seguro.',
  },
  'A session goes on in this bay; stop and end it first.': {
    fr: "Une séance est en cours dans ce poste ; arrêtez-la et terminez-la d'abord.",
    es: 'En este puesto hay una sesión en curso; deténgala y termínela primero.',
  },
  'A session is set aside when it is stopped and everything is said to be off: stop it, then answer.': {
    fr: 'On remet une séance à plus tard quand elle est arrêtée et que tout est dit éteint : arrêtez-la, puis répondez.',
    es: 'Una sesión se deja para otro día cuando está detenida y se ha dicho que todo está apagado: deténgala, y responda.',
  },
  'A voice counts only when the tool has fallen silent and the bay is quiet enough; answer by touch.': {
    fr: "Une voix ne compte que si l'outil se tait et que le poste est assez calme ; répondez au toucher.",
    es: 'Una voz cuenta solo cuando la herramienta calla y el puesto está bastante tranquilo; responda por toque.',
  },
  'An engine profile is sent as JSON.': {
    fr: "Un profil de moteur s'envoie en JSON.",
    es: 'Un perfil de motor se envía como JSON.',
  },
  'Another device leads this session; take over first.': {
    fr: "Un autre appareil mène cette séance ; prenez d'abord la main.",
    es: 'Otro aparato dirige esta sesión; tome primero la dirección.',
  },
  'Hello was said already.': { fr: "Cet appareil s'est déjà présenté.", es: 'Este aparato ya se presentó.' },
  'Messages are text.': { fr: 'Les messages sont du texte.', es: 'Los mensajes son texto.' },
  'No session has begun in this bay.': {
    fr: "Aucune séance n'a commencé dans ce poste.",
    es: 'En este puesto no ha empezado ninguna sesión.',
  },
  'No such device is paired in this bay.': {
    fr: "Aucun appareil de ce nom n'est associé à ce poste.",
    es: 'En este puesto no hay ningún aparato así vinculado.',
  },
  'Nothing was said.': { fr: "Rien n'a été dit.", es: 'No se dijo nada.' },
  'Only the page of this server may talk to it; open its own address.': {
    fr: 'Seule la page de ce serveur peut lui parler ; ouvrez sa propre adresse.',
    es: 'Solo la página de este servidor puede hablarle; abra su propia dirección.',
  },
  'Only the second person says clear.': {
    fr: "Seul l'équipier dit que la zone est dégagée.",
    es: 'Solo el ayudante dice que la zona está despejada.',
  },
  'Only the supervisor asks for a hold; hold it yourself.': {
    fr: "Seul le chef d'atelier demande une pause ; mettez-la vous-même en pause.",
    es: 'Solo el jefe de taller pide una pausa; póngala usted mismo.',
  },
  'Only the technician and the supervisor let go of others.': {
    fr: "Seuls le technicien et le chef d'atelier écartent un autre appareil.",
    es: 'Solo el técnico y el jefe de taller sueltan otros aparatos.',
  },
  'Only the technician and the supervisor renew pairings.': {
    fr: "Seuls le technicien et le chef d'atelier prolongent un appareil.",
    es: 'Solo el técnico y el jefe de taller renuevan aparatos.',
  },
  'Somebody else of the bay renews the pairing of this device.': {
    fr: "C'est quelqu'un d'autre du poste qui prolonge cet appareil.",
    es: 'A este aparato lo renueva otra persona del puesto.',
  },
  'That answered a question that is no longer asked; look again.': {
    fr: "Cela répondait à une question qui n'est plus posée ; regardez de nouveau.",
    es: 'Eso respondía a una pregunta que ya no se hace; mire otra vez.',
  },
  'That device is still there; only the supervisor lets go of one that has not left.': {
    fr: "Cet appareil est encore là ; seul le chef d'atelier écarte un appareil qui n'est pas parti.",
    es: 'Ese aparato sigue ahí; solo el jefe de taller suelta uno que no se ha ido.',
  },
  'That is no request that can be read; reload the page.': {
    fr: 'Cette demande est illisible ; rechargez la page.',
    es: 'Esa petición no se puede leer; recargue la página.',
  },
  'That record cannot be believed, so nobody goes on with it; begin a new one.': {
    fr: 'On ne peut pas croire ce dossier, donc personne ne le continue ; commencez-en un nouveau.',
    es: 'Ese registro no se puede creer, así que nadie lo sigue; empiece uno nuevo.',
  },
  'That session belongs to another bay; ask the supervisor.': {
    fr: "Cette séance est celle d'un autre poste ; demandez au chef d'atelier.",
    es: 'Esa sesión es de otro puesto; pregunte al jefe de taller.',
  },
  'The log is asked for from an entry number on.': {
    fr: "Le journal se demande à partir d'un numéro d'entrée.",
    es: 'El diario se pide desde un número de entrada.',
  },
  'The message is not JSON; reload the page.': {
    fr: "Le message n'est pas du JSON ; rechargez la page.",
    es: 'El mensaje no es JSON; recargue la página.',
  },
  'The message cannot be used: {}. Reload the page.': {
    fr: 'Le message est inutilisable : {}. Rechargez la page.',
    es: 'El mensaje no se puede usar: {}. Recargue la página.',
  },
  'The message is longer than {} bytes.': {
    fr: 'Le message dépasse {} octets.',
    es: 'El mensaje pasa de {} bytes.',
  },
  'The record cannot be read.': { fr: 'Le dossier est illisible.', es: 'El registro no se puede leer.' },
  'The record is too long to be shown here; read it on the laptop itself.': {
    fr: "Le dossier est trop long pour être montré ici ; lisez-le sur l'ordinateur même.",
    es: 'El registro es demasiado largo para mostrarlo aquí; léalo en el propio portátil.',
  },
  'The record sent before is still being checked; send this one after it.': {
    fr: 'Le dossier envoyé avant est encore en vérification ; envoyez celui-ci ensuite.',
    es: 'El registro enviado antes aún se comprueba; envíe este después.',
  },
  'The entries asked for before are still being read; wait for them.': {
    fr: 'Les entrées demandées avant sont encore en cours de lecture ; attendez-les.',
    es: 'Las anotaciones pedidas antes aún se están leyendo; espérelas.',
  },
  'Whoever is at the engine calls for help; from here STOP stops it.': {
    fr: "C'est à qui est près du moteur d'appeler à l'aide ; d'ici, STOP arrête tout.",
    es: 'Pide ayuda quien está junto al motor; desde aquí, STOP lo para.',
  },
  'That session is over; begin a new one.': {
    fr: 'Cette session est terminée ; commencez-en une nouvelle.',
    es: 'Esa sesión ha terminado; empiece una nueva.',
  },
  'The report asked for before is still being written; wait for it.': {
    fr: "Le rapport demandé avant est encore en cours d'écriture ; attendez-le.",
    es: 'El informe pedido antes aún se escribe; espérelo.',
  },
  'The request cannot be used; reload the page.': {
    fr: 'La demande est inutilisable ; rechargez la page.',
    es: 'La petición no se puede usar; recargue la página.',
  },
  'The second person answers this on their own device.': {
    fr: "L'équipier répond à cela sur son propre appareil.",
    es: 'A esto responde el ayudante en su propio aparato.',
  },
  'The server could not do this; its terminal says why.': {
    fr: "Le serveur n'a pas pu le faire ; son terminal dit pourquoi.",
    es: 'El servidor no pudo hacerlo; su terminal dice por qué.',
  },
  'The server is ending.': { fr: "Le serveur s'arrête.", es: 'El servidor se está cerrando.' },
  'The session of this bay is over.': {
    fr: 'La séance de ce poste est finie.',
    es: 'La sesión de este puesto ha terminado.',
  },
  'The session stands still already; nothing is left to be held.': {
    fr: "La séance est déjà immobile ; il n'y a rien à mettre en pause.",
    es: 'La sesión ya está quieta; no queda nada que poner en pausa.',
  },
  'The supervisor answers this, and signs, on their own device.': {
    fr: "Le chef d'atelier répond à cela, et signe, sur son propre appareil.",
    es: 'A esto responde, y firma, el jefe de taller en su propio aparato.',
  },
  'The supervisor asks for a hold; nothing else of these words.': {
    fr: "Le chef d'atelier demande une pause ; rien d'autre de ces mots.",
    es: 'El jefe de taller pide una pausa; de estas palabras, nada más.',
  },
  "The supervisor's device looks on: what it hears counts for nothing.": {
    fr: "L'appareil du chef d'atelier regarde : ce qu'il entend ne compte pas.",
    es: 'El aparato del jefe de taller solo mira: lo que oye no cuenta.',
  },
  'The supervisor cannot answer for others.': {
    fr: "Le chef d'atelier ne peut pas répondre pour d'autres.",
    es: 'El jefe de taller no puede responder por otros.',
  },
  'The supervisor looks on, may stop, ask for a hold, and answer what is theirs; nothing else.': {
    fr: "Le chef d'atelier regarde, peut tout arrêter, demander une pause et répondre à ce qui lui revient ; rien d'autre.",
    es: 'El jefe de taller mira, puede detenerlo todo, pedir una pausa y responder a lo suyo; nada más.',
  },
  'There is no profile "{}" here; choose {}.': {
    fr: "Il n'y a pas de profil « {} » ici ; choisissez {}.",
    es: 'Aquí no hay ningún perfil «{}»; elija {}.',
  },
  'There is no such bay any more.': { fr: "Ce poste n'existe plus.", es: 'Ese puesto ya no existe.' },
  'There is no such model on this laptop.': {
    fr: "Il n'y a pas ce modèle sur cet ordinateur.",
    es: 'En este portátil no hay ese modelo.',
  },
  'There is no such session in this bay.': {
    fr: "Il n'y a pas cette séance dans ce poste.",
    es: 'En este puesto no hay esa sesión.',
  },
  'There is no such session in this shop.': {
    fr: "Il n'y a pas cette séance dans cet atelier.",
    es: 'En este taller no hay esa sesión.',
  },
  'There is nothing at this address.': {
    fr: "Il n'y a rien à cette adresse.",
    es: 'En esta dirección no hay nada.',
  },
  'This connection said nothing for too long and is closed; come again.': {
    fr: "Cette liaison s'est tue trop longtemps et est fermée ; revenez.",
    es: 'Esta conexión calló demasiado tiempo y está cerrada; vuelva.',
  },
  'This device is connected in another place now.': {
    fr: 'Cet appareil est maintenant connecté ailleurs.',
    es: 'Este aparato está ahora conectado en otro sitio.',
  },
  'This device is not paired, or not any more; pair it again.': {
    fr: "Cet appareil n'est pas associé, ou ne l'est plus ; associez-le de nouveau.",
    es: 'Este aparato no está vinculado, o ya no; vincúlelo otra vez.',
  },
  'This is a session of another bay, or of the laptop itself; nothing was kept.': {
    fr: "C'est une séance d'un autre poste, ou de l'ordinateur même ; rien n'a été gardé.",
    es: 'Es una sesión de otro puesto, o del propio portátil; no se guardó nada.',
  },
  'This is not for the role of {}.': {
    fr: "Ce n'est pas pour ce rôle ({}).",
    es: 'Esto no es para esta función ({}).',
  },
  'This is too large to be done here; do it on the laptop itself.': {
    fr: "C'est trop grand pour être fait ici ; faites-le sur l'ordinateur même.",
    es: 'Es demasiado grande para hacerlo aquí; hágalo en el propio portátil.',
  },
  'This question is not for the second person.': {
    fr: "Cette question n'est pas pour l'équipier.",
    es: 'Esta pregunta no es para el ayudante.',
  },
  'This server does not answer to that name; use the address that its terminal shows.': {
    fr: "Ce serveur ne répond pas à ce nom ; prenez l'adresse que montre son terminal.",
    es: 'Este servidor no responde a ese nombre; use la dirección que muestra su terminal.',
  },
  'This was given up after {} s; do it on the laptop itself.': {
    fr: "Abandonné après {} s ; faites-le sur l'ordinateur même.",
    es: 'Abandonado tras {} s; hágalo en el propio portátil.',
  },
  'Too many connections from this address; wait a little.': {
    fr: 'Trop de liaisons depuis cette adresse ; attendez un peu.',
    es: 'Demasiadas conexiones desde esta dirección; espere un poco.',
  },
  'Too many connections that have not said hello.': {
    fr: 'Trop de liaisons sans présentation.',
    es: 'Demasiadas conexiones sin presentarse.',
  },
  'Too many devices are paired in this bay; let go of one first.': {
    fr: "Trop d'appareils sont associés à ce poste ; écartez-en un d'abord.",
    es: 'Hay demasiados aparatos vinculados a este puesto; suelte uno primero.',
  },
  'Too many messages; slow down.': {
    fr: 'Trop de messages ; moins vite.',
    es: 'Demasiados mensajes; más despacio.',
  },
  'Too many profiles at once; wait a little.': {
    fr: 'Trop de profils à la fois ; attendez un peu.',
    es: 'Demasiados perfiles a la vez; espere un poco.',
  },
  'Too many records at once; send the rest later.': {
    fr: 'Trop de dossiers à la fois ; envoyez le reste plus tard.',
    es: 'Demasiados registros a la vez; envíe el resto más tarde.',
  },
  'Too many requests; wait a little.': {
    fr: 'Trop de demandes ; attendez un peu.',
    es: 'Demasiadas peticiones; espere un poco.',
  },
  'Too many tries; wait a minute and type the code again.': {
    fr: "Trop d'essais ; attendez une minute et tapez de nouveau le code.",
    es: 'Demasiados intentos; espere un minuto y escriba otra vez el código.',
  },
  'Too many {} at once; try again in a minute.': {
    fr: 'Trop à la fois ({}) ; réessayez dans une minute.',
    es: 'Demasiado a la vez ({}); inténtelo otra vez en un minuto.',
  },
  'What was sent is not a record of first-fire; nothing was kept.': {
    fr: "Ce qui a été envoyé n'est pas un dossier de first-fire ; rien n'a été gardé.",
    es: 'Lo enviado no es un registro de first-fire; no se guardó nada.',
  },
  'What was sent is too long.': {
    fr: 'Ce qui a été envoyé est trop long.',
    es: 'Lo enviado es demasiado largo.',
  },
  'Pairing needs six digits and a name for the device: {}.': {
    fr: "Pour associer, il faut six chiffres et un nom pour l'appareil : {}.",
    es: 'Para vincular hacen falta seis cifras y un nombre del aparato: {}.',
  },
  'Sessions are found by a text of up to {} characters.': {
    fr: "Les séances se cherchent par un texte d'au plus {} caractères.",
    es: 'Las sesiones se buscan con un texto de hasta {} caracteres.',
  },
  'The laptop has another profile "{}"; give yours another name inside its file.': {
    fr: "L'ordinateur a un autre profil « {} » ; donnez un autre nom au vôtre dans son fichier.",
    es: 'El portátil tiene otro perfil «{}»; dé otro nombre al suyo en su archivo.',
  },
  'The pairing of this device ends within the hour; then it can only stop. Pair it again before.': {
    fr: "L'association de cet appareil finit dans l'heure ; ensuite il ne pourra plus que tout arrêter. Associez-le avant.",
    es: 'El vínculo de este aparato acaba dentro de una hora; después solo podrá detener. Vincúlelo antes otra vez.',
  },
  'The pairing of this device ends within the hour, or with the session where that is later; pair it again then.':
    {
      fr: "L'association de cet appareil finit dans l'heure, ou avec la séance si elle dure plus ; associez-le alors de nouveau.",
      es: 'El vínculo de este aparato acaba dentro de una hora, o con la sesión si dura más; vincúlelo entonces otra vez.',
    },
  'The pairing of this device has ended: it can stop the session and nothing else. Pair it again.': {
    fr: "L'association de cet appareil est finie : il peut arrêter la séance et rien d'autre. Associez-le de nouveau.",
    es: 'El vínculo de este aparato ha acabado: puede detener la sesión y nada más. Vincúlelo otra vez.',
  },
  "That code is wrong or out of date; look at the server's terminal.": {
    fr: 'Ce code est faux ou périmé ; regardez le terminal du serveur.',
    es: 'Ese código es falso o ha caducado; mire el terminal del servidor.',
  },
  "This is the technician's to do.": {
    fr: "C'est au technicien de le faire.",
    es: 'Eso le toca al técnico.',
  },
  "The laptop's disk is nearly full; make room there, then send it again.": {
    fr: "Le disque de l'ordinateur est presque plein ; faites-y de la place, puis renvoyez.",
    es: 'El disco del portátil está casi lleno; haga sitio allí, y envíelo otra vez.',
  },
  'The other side speaks another version than {}; reload the page.': {
    fr: "L'autre côté parle une autre version que {} ; rechargez la page.",
    es: 'El otro lado habla otra versión que {}; recargue la página.',
  },

  'The device that leads is away: the session was stopped. Key off.': {
    fr: "L'appareil qui mène est absent : la séance a été arrêtée. Coupez le contact.",
    es: 'El aparato que dirige no está: la sesión se detuvo. Quite el contacto.',
  },

  // The page's own parts.
  'The laptop does not answer; join its network, then try again.': {
    fr: "L'ordinateur ne répond pas ; rejoignez son réseau, puis réessayez.",
    es: 'El portátil no responde; conéctese a su red, e inténtelo otra vez.',
  },
  'The laptop does not answer; join its network first.': {
    fr: "L'ordinateur ne répond pas ; rejoignez d'abord son réseau.",
    es: 'El portátil no responde; conéctese primero a su red.',
  },
  'There is no laptop at this address; open the page from the address that it shows.': {
    fr: "Il n'y a pas d'ordinateur à cette adresse ; ouvrez la page à l'adresse qu'il montre.",
    es: 'No hay ningún portátil en esta dirección; abra la página en la dirección que él muestra.',
  },
  'The laptop has no model; bring one there: npm start -- model add FILE.': {
    fr: "L'ordinateur n'a pas de modèle ; apportez-en un là-bas : npm start -- model add FICHIER.",
    es: 'El portátil no tiene ningún modelo; llévele uno: npm start -- model add ARCHIVO.',
  },
  'The browser let a sentence not be heard, which it does before a touch; read it on the screen.': {
    fr: "Le navigateur n'a pas laissé entendre une phrase, comme il fait avant un toucher ; lisez-la à l'écran.",
    es: 'El navegador no dejó oír una frase, como hace antes de un toque; léala en la pantalla.',
  },
  'The model of the recognizer could not be loaded; connect to the server once, or answer by touch.': {
    fr: "Le modèle de l'écoute n'a pas pu être chargé ; connectez-vous une fois au serveur, ou répondez au toucher.",
    es: 'No se pudo cargar el modelo de la escucha; conéctese una vez al servidor, o responda por toque.',
  },
  'This page may not use a microphone, because it did not come over https; answer by touch.': {
    fr: "Cette page ne peut pas se servir d'un micro, car elle n'est pas venue par https ; répondez au toucher.",
    es: 'Esta página no puede usar un micrófono, porque no vino por https; responda por toque.',
  },
  'The microphone cannot be used: {}. Answer by touch until then.': {
    fr: "Le micro est inutilisable : {}. Répondez au toucher d'ici là.",
    es: 'El micrófono no se puede usar: {}. Mientras tanto responda por toque.',
  },
  'The microphone is gone; connect it and reload, or answer by touch.': {
    fr: "Le micro n'est plus là ; branchez-le et rechargez, ou répondez au toucher.",
    es: 'El micrófono ya no está; conéctelo y recargue, o responda por toque.',
  },
  'The recognizer broke down ({}); answer by touch, or reload the page.': {
    fr: "L'écoute est tombée en panne ({}) ; répondez au toucher, ou rechargez la page.",
    es: 'La escucha se averió ({}); responda por toque, o recargue la página.',
  },
  "The browser's recognition service cannot be used: {}.": {
    fr: 'Le service de reconnaissance du navigateur est inutilisable : {}.',
    es: 'El servicio de reconocimiento del navegador no se puede usar: {}.',
  },
  'Vosk cannot be loaded without a network. The embedded recognizer listens instead.': {
    fr: "Vosk ne se charge pas sans réseau. L'écoute intégrée le remplace.",
    es: 'Vosk no se puede cargar sin red. Escucha el integrado en su lugar.',
  },
  'There is no Vosk model on this device; bring one in the settings.': {
    fr: "Il n'y a pas de modèle Vosk sur cet appareil ; apportez-en un dans les réglages.",
    es: 'En este aparato no hay ningún modelo de Vosk; traiga uno en los ajustes.',
  },
  "The device's voice failed ({}); read the sentence on the screen.": {
    fr: "La voix de l'appareil a échoué ({}) ; lisez la phrase à l'écran.",
    es: 'La voz del aparato falló ({}); lea la frase en la pantalla.',
  },
  'The record cannot be kept in this browser ({}); free some space, or use another one.': {
    fr: 'Ce navigateur ne peut pas garder le dossier ({}) ; libérez de la place, ou prenez-en un autre.',
    es: 'Este navegador no puede guardar el registro ({}); libere espacio, o use otro.',
  },
};

const inOne = (code: keyof InOtherWords): BySentence =>
  Object.fromEntries(Object.entries(refusals).map(([sentence, others]) => [sentence, others[code]]));
const tables: Readonly<Partial<Record<string, BySentence>>> = { fr: inOne('fr'), es: inOne('es') };

/** A refusal or a report in the words of this language; as it came, where the table lacks it. */
export function inOtherWords(sentence: string, language: string): string {
  const table = tables[language];
  return table ? bySentence(sentence, table) : sentence;
}
