/** Tools, things and people that workshop talk is about. */
const tools = [
  'torque wrench',
  'ten millimetre socket',
  'big screwdriver',
  'flashlight',
  'grease gun',
  'jack',
];
const places = ['bench', 'second drawer', 'back of the truck', 'office', 'next bay'];
const parts = ['alternator', 'water pump', 'fuel line', 'turbo', 'starter', 'exhaust clamp', 'fan belt'];
const people = ['Bob', 'Maria', 'the boss', 'my brother', 'the driver'];

const made = [
  ...tools.map((tool, i) => `can you pass me the ${tool} from the ${places[i % places.length]}`),
  ...tools.map((tool, i) => `I left the ${tool} in the ${places[(i + 2) % places.length]} yesterday`),
  ...parts.map((part, i) => `${people[i % people.length]} says the ${part} is on back order until Thursday`),
  ...parts.map(part => `did you ever see a ${part} that looked like that`),
  ...parts.map(part => `they charged him two hundred for the ${part}`),
  ...people.map(person => `${person} wants to know when we are done here`),
  ...people.map(person => `where did ${person} go with the keys`),
];

/** Talk with words in it that are also replies, numbers or nearly a stop word. */
const near = [
  'the oil on the floor is from the other truck',
  'I am ready for lunch whenever you are',
  'that is right where I left it',
  'the coolant is in the blue drum over there',
  'yes I told him about that last week',
  'no I have not seen him today',
  'the key is on the hook in the office',
  'wait until you see what he did',
  'it was fifty one degrees this morning',
  'the shop opens at seven thirty tomorrow',
  'he paid about forty two hundred for it',
  'there is a problem with the printer again',
  'help me lift this thing',
  'the pressure washer is leaking again',
  'I think the lamp over the bench is out',
  'go back to the part about the fishing trip',
  'hold this for a second',
  'the top step is loose so watch it',
  'we should start with the stock filter',
  'the shop down the street is closed',
  'he parked on top of my spot',
  'let it drop into the pan',
  'step over the hose',
  'my status is tired and hungry',
];

const plain = [
  'did you see the game last night',
  'I think we need a bigger hammer',
  'what time is lunch',
  'can you hear that noise',
  'maybe it will rain later',
  'where did I put my gloves',
  'I do not know what he was thinking',
  'the radio is too loud in here',
  'tomorrow is Friday thank goodness',
  'that hose looks a little loose to me',
  'turn the light toward me please',
  'this bolt is really stuck',
  'coffee is in the office',
  'let me check the manual first',
  'we are almost finished with it',
  'I am not so sure about that',
  'her daughter starts school in the fall',
  'traffic was terrible on the bridge',
  'they moved the parts counter again',
  'remember to order more rags',
  'and now the weather for the valley',
  'sunny this afternoon with light wind from the west',
  'call now and get the second one free',
  'the mayor spoke to reporters on Monday',
  'that was our number three song this week',
  'stay tuned for the news after this',
];

/** What people and radios say in a workshop while nobody is answering the tool. */
export const workshopTalk: readonly string[] = [...plain, ...near, ...made];
