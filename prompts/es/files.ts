import type { BySentence } from '../types.ts';

/** What is wrong with an engine profile or a job card that was brought, by its English sentence. */
export const files: BySentence = {
  // What is wrong with a job card.
  'Job card {} cannot be read: {words}; give the path of a JSON file.':
    'La hoja de trabajo {} no se puede leer: {words}; dé la ruta de un archivo JSON.',
  'Job card {} is not JSON: {words}; correct it or leave it out.':
    'La hoja de trabajo {} no es JSON: {words}; corríjala o quítela.',
  'Job card {}: {words}': 'Hoja de trabajo {}: {words}',
  'It holds vehicle, engine, technician, second and supervisor, and may hold {}.':
    'Lleva vehicle, engine, technician, second y supervisor, y puede llevar {}.',

  'Job card: {words} Name a card with --job.': 'Hoja de trabajo: {words} Indique una hoja con --job.',
  '"{}" is invented; on the card of a real engine stand those who start it, and its vehicle.':
    '«{}» es inventado; en la hoja de un motor real figuran quienes lo arrancan, y su vehículo.',
  '"{}" is technician and second person at once; name somebody else, who stands at the red control.':
    '«{}» es a la vez técnico y segunda persona; indique a otra persona, que esté junto al mando rojo.',
  '"{}" is technician and supervisor at once; name somebody else, who signs the start off.':
    '«{}» es a la vez técnico y jefe de taller; indique a otra persona, que firme el arranque.',
  '{} (invented)': '{} (inventado)',
  'Invented vehicle': 'Vehículo inventado',
  'Invented generating set': 'Grupo electrógeno inventado',
  'Invented boat': 'Barco inventado',
  'Invented machine': 'Máquina inventada',

  // What is wrong with a profile.
  'Profile {}: {words}': 'Perfil {}: {words}',
  'the card: {} is not a known key; remove it or correct its spelling.':
    'la hoja: {} no es una clave conocida; quítela o corríjala.',
  'the profile: {} is not a known key; remove it or correct its spelling.':
    'el perfil: {} no es una clave conocida; quítela o corríjala.',
  'the card: {} is not allowed; {words}.': 'la hoja: {} no se permite; {words}.',
  'the profile: {} is not allowed; {words}.': 'el perfil: {} no se permite; {words}.',
  '{}: is missing; {words}.': '{}: falta; {words}.',
  '{}: {} is not allowed; {words}.': '{}: {} no se permite; {words}.',
  '{}: {} is not a known key; remove it or correct its spelling.':
    '{}: {} no es una clave conocida; quítela o corríjala.',
  'is not JSON: {words}; correct it, or make a profile: npm start -- engine new.':
    'no es JSON: {words}; corríjalo, o haga un perfil: npm start -- engine new.',
  'cannot be read: {words}; give the path of a profile or one of {}.':
    'no se puede leer: {words}; dé la ruta de un perfil, o uno de {}.',
  '{}: has to be read or measured before a real first fire.':
    '{}: hay que leerlo o medirlo antes de un primer arranque real.',
  '{}: may stay assumed only where the supervisor accepts it by name.':
    '{}: puede quedar supuesto solo si el supervisor lo acepta por su nombre.',
  'Look at "engine check {}"; a rehearsal is possible as it is.':
    'Mire «engine check {}»; un ensayo es posible tal como está.',
  'is there already; choose another name, or "engine copy {} NAME".':
    'ya existe; elija otro nombre, o «engine copy {} NOMBRE».',
  'is no question; "engine check" and the page of all fields name them.':
    'no es una pregunta; «engine check» y la página de todos los campos las nombran.',
  'cannot be written: {words}; choose a place that can be.':
    'no se puede escribir: {words}; elija un sitio donde se pueda.',
  'cannot be gone on with ({words}); move it away to begin anew.':
    'no se puede seguir con él ({words}); muévalo para empezar de nuevo.',
  // What the system says of a file, and what is wrong in one.
  'there is no such file or folder': 'no hay nada con ese nombre',
  'it is a folder': 'es una carpeta',
  'part of the path is not a folder': 'una parte de la ruta no es una carpeta',
  'permission is denied': 'no hay permiso',
  'the disk is full': 'el disco está lleno',
  'the disk is read-only': 'el disco es de solo lectura',
  'it is empty': 'está vacío',
  'it does not begin with "{"': 'al principio falta «{»',
  'it breaks off before its end': 'le falta el final',
  'line {} is wrong': 'la línea {} está mal',
  'something in it is wrong': 'hay algo mal',
  'expected string': 'hace falta un texto',
  'expected number': 'hace falta un número',
  'expected int': 'hace falta un número entero',
  'expected boolean': 'hace falta true o false',
  'expected object': 'hace falta un objeto',
  'expected array': 'hace falta una lista',
  'expected one of {}': 'hace falta uno de {}',
  'expected {}': 'hace falta {}',
  'too small: expected {words} to be >={}': 'demasiado pequeño: hace falta {words} de {} o más',
  'too small: expected {words} to be >{}': 'demasiado pequeño: hace falta {words} de más de {}',
  'too small: expected {words} to have >={} {words}':
    'demasiado pequeño: hace falta {words} con {} {words} o más',
  'too big: expected {words} to be <={}': 'demasiado grande: hace falta {words} de {} o menos',
  'too big: expected {words} to have <={} {words}':
    'demasiado grande: hace falta {words} con {} {words} o menos',
  string: 'un texto',
  number: 'un número',
  int: 'un número entero',
  array: 'una lista',
  characters: 'letras',
  items: 'elementos',
  'invalid discriminator value. Expected {}': 'hace falta {}',
};
