/** French talk of a workshop and of every day, made of halves that fit: what is said near the tool and not to it. */
type Choose = <T>(all: readonly T[]) => T;

const list = (text: string): readonly string[] =>
  text.split('|').map(one => one.trim().replaceAll(/\s+/g, ' '));

const tools = list(`
  la lampe | la clé | la clé de dix | la clé à cliquet | la douille | le marteau | le tournevis | le pied de biche |
  la clé dynamométrique | le chiffon | le bac de vidange | l'entonnoir | la pompe à graisse | le jeu de cales | le cric |
  le multimètre | la lampe témoin | la rallonge | les gants | la boîte à vis | le tuyau d'air | le manuel | le ruban |
  le marqueur | la pince | la pince multiprise | le serre joint | la scie | la lime | la brosse
`);
const parts = list(`
  le carter | le turbo | l'injecteur | le tuyau de gazole | la conduite de retour | la pompe à eau | la pompe à huile |
  le tendeur | l'alternateur | le démarreur | la bougie | le joint de culasse | le couvre culasse | le culbuteur |
  l'arbre à cames | le capteur | la tubulure | le collecteur | le thermostat | la durite | le radiateur | le filtre à air |
  le filtre à huile | le bouchon | la jauge | le câble de masse | le faisceau | le connecteur | le volant |
  l'embrayage | la cloche | le support moteur | le refroidisseur | le piston | la bielle | la chemise | le vilebrequin |
  le collier | le relais | la boîte à fusibles | le réservoir | la courroie | le ventilateur | la batterie
`);
const doing = list(`
  vérifier | nettoyer | serrer | desserrer | remplacer | regarder | démonter | remonter | marquer | mesurer | purger |
  amorcer | vidanger | remplir | commander | lever | tenir | tester | débrancher | essuyer | déplacer | peindre | oublier
`);
const states = list(`
  desserré | serré | fendu | sec | mouillé | chaud | froid | neuf | usé | tordu | bloqué | propre | sale | plein | vide |
  presque fini | en mauvais état | à l'envers | encore dans le carton | en retard | dans le passage | un peu rugueux
`);
const people = list(`
  il | elle | le patron | le client | le chauffeur | le nouveau | quelqu'un | mon frère | l'équipe de nuit | on | tu |
  le magasinier | la voisine | ma collègue
`);
const when = list(`
  ce matin | après le repas | avant de partir | lundi | la semaine dernière | demain | dans une minute | plus tard |
  quand ça aura refroidi | juste après | la prochaine fois | hier | en fin de journée | à midi | ce soir | maintenant
`);
const places = list(`
  sur l'établi | sous le camion | dans le tiroir | derrière la porte | près du compresseur | dans l'autre travée |
  par terre | là bas | dans ma caisse | dehors dans la cour | devant | à gauche | à droite | en haut sur l'étagère
`);
const smallTalk = list(`
  tu as vu le match hier soir | comment était ton week end | il fait trop froid ici | baisse un peu la radio |
  qui a laissé la porte ouverte | tu as faim | j'ai besoin d'un café | quelle heure est il | c'est l'heure de la pause |
  j'ai mal au dos aujourd'hui | la machine à café est encore en panne | on dirait qu'il va pleuvoir | où sont ils passés |
  donne moi un coup de main | attention à tes doigts | attention à la tête | doucement avec ça | merci | merci beaucoup |
  bonjour | à demain | pas de souci | ça me va | c'est ce que j'ai dit | laisse moi réfléchir | aucune idée |
  jamais entendu parler | c'était comme ça quand je suis arrivé | appelle moi quand tu as fini | le téléphone sonne |
  il y a quelqu'un à la porte | passe moi ça | on verra bien | ce n'est pas grave | je te l'avais dit | tu es sûr |
  comme tu veux | d'accord | bien sûr | peut être | pas du tout | je ne sais pas | on y va | viens voir | regarde ça |
  tiens bon | lâche | pousse | tire | plus haut | plus bas | encore un peu | c'est bon là | voilà | et alors |
  mon fils a dix ans | ma fille apprend à conduire | les vacances commencent bientôt | il reste du pain |
  le facteur est passé | la route est barrée | il y a du monde aujourd'hui | le train a du retard
`);

export function frenchTalk(choose: Choose): string {
  const [tool, part, other] = [choose(tools), choose(parts), choose(parts)];
  return choose([
    () =>
      `${choose(['passe moi', 'donne moi', 'apporte moi', 'trouve moi', 'tiens', 'range', 'prends'])} ${tool}`,
    () =>
      `${choose(['tu peux', 'vous pouvez', 'il faut', 'on devrait', 'je dois', 'je vais', "n'oublie pas de", 'on va', 'tu dois', 'pense à'])} ${choose(doing)} ${part} ${choose(['', choose(when)])}`,
    () => `${part} ${choose(['est', 'était', 'a l’air', 'semble', "n'est pas"])} ${choose(states)}`,
    () =>
      `${choose(['où est', 'qui a', 'qui a pris', 'tu as vu', "j'ai mis", 'elle a laissé', 'tu as laissé'])} ${tool} ${choose(['', choose(places)])}`,
    () =>
      `${choose(people)} ${choose(['a dit que', 'croit que', 'pense que', 'savait que', 'trouve que'])} ${part} ${choose(['est', 'était', 'serait'])} ${choose(states)}`,
    () => `${tool} est ${choose(places)}`,
    () =>
      `${choose(["j'ai déjà fait", 'il reste à faire', "personne n'a fait", 'il faudrait faire'])} ${part} et ${other}`,
    () =>
      `${choose(['mets', 'laisse', 'pose', 'jette'])} ${choose([tool, part])} ${choose(places)}, ${choose(smallTalk)}`,
    () => choose(smallTalk),
    () => `${choose(smallTalk)}, ${choose(smallTalk)}`,
    () =>
      `${choose(['si', 'quand', 'parce que', 'je crois que', 'il se peut que', 'comme'])} ${part} est ${choose(states)}, ${choose(['il faut voir', 'regarde', 'démonte', 'commande'])} ${other} ${choose(['', 'aussi', "d'abord", 'encore'])}`,
    () => `${choose(['combien coûte', 'comment va', 'à quoi sert', 'depuis quand tu as'])} ${part}`,
    () =>
      `il y a ${choose(["de l'huile", "de l'eau", 'du gazole', 'de la poussière', 'une fissure', 'un boulon', 'du jeu', 'une drôle d’odeur', "de l'air"])} dans ${part}`,
  ])();
}

/** Sounds like a word for stopping, or has one in it, and stops nothing. */
export const nearFrenchStop: readonly string[] = list(`
  top | au top | tope là | stock | en stock | le stock | rupture de stock | poste | un poste | la poste | stable | le store |
  le stylo | la stature | la station | le stade | du sport | la porte | le pot | un pote | mon pote | tôt | trop | hop | hop là |
  et hop | chope | la chope | étoffe | l'étoffe | une strophe | la catastrophe | le stoppage | auto stop | faire du stop |
  le feu stop | un panneau stop | un non stop | après | auprès | prêt | arrêter | il va s'arrêter | ça ne s'arrête pas |
  il s'est arrêté | un arrêt | l'arrêt de bus | un arrêt maladie | sans arrêt | arête | une arête | arrière | derrière |
  une barrette | la charrette | achète | achetez | j'achète | rate | raté | c'est raté | ratez | à côté | en retrait |
  arrivé | arriver | arrivez | à l'heure | j'arrête pas de le dire | la retraite | traite | traiter | une arrivée | tu rates |
  halte là | la halte garderie | alterne | halle | la halle | salle | la salle | haute | faute | saute | alto | mal | malte |
  un coup | le coup | coupe | la coupe | une coupe | ça se coupe | couper | la coupure | couple | le couple | couplé | groupe |
  le groupe | loupe | la loupe | j'ai loupé | louper | soupe | la soupe | souper | route | la route | goutte | une goutte |
  écoute | écoutez | coûte | coûter | toupet | occupé | occuper | houppe | troupe | découpe | découpez | recoupez | croupe |
  urgence | une urgence | les urgences | d'urgence | dur | durant | un numéro d'urgence | frein d'urgence | moteur |
  le moteur | un moteur | tout | tout est là | tous | partout | surtout | pas du tout | toutou | tout va bien | sept |
  l'étape | une étape | tape | tapez | taper | step | le step | stress | strict | astuce | poste restante | tap |
  un télescope | une escorte | le scope | l'écope | écoper | une échoppe | développe | enveloppe | galope | syncope | salope |
  démarre | démarrez | redémarre | repart | ça tourne encore | pause | ose | au poste | apostrophe | stand | un stand |
  le starter | une startup | un short | du scotch | le score | le sort | le nord | une note | la botte | une hotte | une cote
`);

/** One of our wordings or numbers inside of talk. */
export function aroundFrenchWords(choose: Choose, ours: string): string {
  return choose([
    () =>
      `${choose(['je crois', 'je pense', 'elle a dit', 'il a dit', "d'accord", 'bon', 'ouais', 'alors', 'voyons', 'je dirais', 'ça dit', 'maintenant c’est', 'je lis', "j'ai", 'on dirait', 'ça fait'])} ${ours}`,
    () =>
      `${ours} ${choose(['je crois', 'maintenant', 'ici', 'encore', 'pour moi', 'en ce moment', 'à peu près', 'de ce côté', 'je dirais', 'là', 'non'])}`,
    () =>
      `${choose(['comment ça', 'tu as dit', 'tu veux dire', "c'est", "c'était", 'pas', 'pourquoi', 'qui a dit', 'ne dis pas', "ce n'est pas"])} ${ours}`,
    () => `${ours}, ${frenchTalk(choose)}`,
    () => `${frenchTalk(choose)}, ${ours}`,
    () => `${choose(['écoute', 'allô', 'bonjour', 'hé', 'seconde'])}, ${ours}`,
  ])();
}
