import type { BySentence } from '../types.ts';

/** What is wrong with an engine profile or a job card that was brought, by its English sentence. */
export const files: BySentence = {
  // What is wrong with a job card.
  'Job card {} cannot be read: {words}; give the path of a JSON file.':
    "La fiche de travail {} ne peut être lue : {words} ; donnez le chemin d'un fichier JSON.",
  'Job card {} is not JSON: {words}; correct it or leave it out.':
    "La fiche de travail {} n'est pas du JSON : {words} ; corrigez-la ou enlevez-la.",
  'Job card {}: {words}': 'Fiche de travail {} : {words}',
  'It holds vehicle, engine, technician, second and supervisor, and may hold {}.':
    'Elle contient vehicle, engine, technician, second et supervisor, et peut contenir {}.',

  'Job card: {words} Name a card with --job.': 'Fiche de travail : {words} Nommez une fiche avec --job.',
  '"{}" is invented; on the card of a real engine stand those who start it, and its vehicle.':
    "« {} » est inventé ; sur la fiche d'un vrai moteur figurent ceux qui le démarrent, et son véhicule.",
  '"{}" is technician and second person at once; name somebody else, who stands at the red control.':
    "« {} » est à la fois technicien et deuxième personne ; nommez quelqu'un d'autre, qui se tient à la commande rouge.",
  '"{}" is technician and supervisor at once; name somebody else, who signs the start off.':
    "« {} » est à la fois technicien et chef d'atelier ; nommez quelqu'un d'autre, qui signe le démarrage.",
  '{} (invented)': '{} (inventé)',
  'Invented vehicle': 'Véhicule inventé',
  'Invented generating set': 'Groupe électrogène inventé',
  'Invented boat': 'Bateau inventé',
  'Invented machine': 'Machine inventée',

  // What is wrong with a profile.
  'Profile {}: {words}': 'Profil {} : {words}',
  'the card: {} is not a known key; remove it or correct its spelling.':
    "la fiche : {} n'est pas une clé connue ; enlevez-la ou corrigez-la.",
  'the profile: {} is not a known key; remove it or correct its spelling.':
    "le profil : {} n'est pas une clé connue ; enlevez-la ou corrigez-la.",
  'the card: {} is not allowed; {words}.': "la fiche : {} n'est pas permis ; {words}.",
  'the profile: {} is not allowed; {words}.': "le profil : {} n'est pas permis ; {words}.",
  '{}: is missing; {words}.': '{} : manque ; {words}.',
  '{}: {} is not allowed; {words}.': "{} : {} n'est pas permis ; {words}.",
  '{}: {} is not a known key; remove it or correct its spelling.':
    "{} : {} n'est pas une clé connue ; enlevez-la ou corrigez-la.",
  'is not JSON: {words}; correct it, or make a profile: npm start -- engine new.':
    "n'est pas du JSON : {words} ; corrigez-le, ou faites un profil : npm start -- engine new.",
  'cannot be read: {words}; give the path of a profile or one of {}.':
    "ne peut être lu : {words} ; donnez le chemin d'un profil, ou un de {}.",
  '{}: has to be read or measured before a real first fire.':
    '{} : à lire ou à mesurer avant un vrai premier démarrage.',
  '{}: may stay assumed only where the supervisor accepts it by name.':
    "{} : ne peut rester supposé que si le chef d'atelier l'accepte par son nom.",
  'Look at "engine check {}"; a rehearsal is possible as it is.':
    'Voyez « engine check {} » ; un exercice est possible tel quel.',
  'is there already; choose another name, or "engine copy {} NAME".':
    'existe déjà ; choisissez un autre nom, ou « engine copy {} NOM ».',
  'is no question; "engine check" and the page of all fields name them.':
    "n'est pas une question ; « engine check » et la page de tous les champs les nomment.",
  'cannot be written: {words}; choose a place that can be.':
    "ne peut être écrit : {words} ; choisissez un endroit qui peut l'être.",
  'cannot be gone on with ({words}); move it away to begin anew.':
    'ne peut être repris ({words}) ; déplacez-le pour recommencer.',
  // What the system says of a file, and what is wrong in one.
  'there is no such file or folder': "il n'y a rien de ce nom",
  'it is a folder': "c'est un dossier",
  'part of the path is not a folder': "une partie du chemin n'est pas un dossier",
  'permission is denied': "l'accès est refusé",
  'the disk is full': 'le disque est plein',
  'the disk is read-only': 'le disque est en lecture seule',
  'it is empty': 'il est vide',
  'it does not begin with "{"': 'le début doit être « { »',
  'it breaks off before its end': 'la fin manque',
  'line {} is wrong': 'la ligne {} est fausse',
  'something in it is wrong': 'il y a une faute',
  'expected string': 'il faut un texte',
  'expected number': 'il faut un nombre',
  'expected int': 'il faut un nombre entier',
  'expected boolean': 'il faut true ou false',
  'expected object': 'il faut un objet',
  'expected array': 'il faut une liste',
  'expected one of {}': 'il faut un de {}',
  'expected {}': 'il faut {}',
  'too small: expected {words} to be >={}': 'trop petit : il faut {words} de {} ou plus',
  'too small: expected {words} to be >{}': 'trop petit : il faut {words} de plus de {}',
  'too small: expected {words} to have >={} {words}': 'trop petit : il faut {words} avec {} {words} ou plus',
  'too big: expected {words} to be <={}': 'trop grand : il faut {words} de {} ou moins',
  'too big: expected {words} to have <={} {words}': 'trop grand : il faut {words} avec {} {words} ou moins',
  string: 'un texte',
  number: 'un nombre',
  int: 'un nombre entier',
  array: 'une liste',
  characters: 'lettres',
  items: 'éléments',
  'invalid discriminator value. Expected {}': 'il faut {}',
};
