/**
 * How each word that may be said is pronounced, alone and before others, in the phones of
 * `src/voice/phone-network/phones.ts`: by espeak-ng, and by the rules of `acoustic-model/french-words.ts`. Written by
 * `npm run pronunciations`: not to be changed by hand.
 */
const lines = `
a: a
abîmé: a b i m e
accepte: a k s ɛ p t
accepté: a k s ɛ p t e | a k s e p t e
achetez: a ʃ t e
affirmatif: a f i ʁ m a t i f
aide: ɛ d
air: ɛ ʁ
alerte: a l ɛ ʁ t
aller: a l e
allumé: a l y m e
alterne: a l t ɛ ʁ n
altitude: a l t i t y d
amorcé: a m ɔ ʁ s e | a m o ʁ s e
américains: a m e ʁ i k ɛ̃ | a m ɛ ʁ i k ɛ̃
anormal: a n ɔ ʁ m a l | a n o ʁ m a l
après: a p ʁ ɛ | a p ʁ e
arrière: a ʁ j ɛ ʁ
arrêt: a ʁ ɛ | a ʁ e
arrête: a ʁ ɛ t
arrêtez: a ʁ ɛ t e | a ʁ e t e
attendez: a t ɑ̃ d e
attends: a t ɑ̃
au: o
aucun: o k ɛ̃ | o k ɛ̃ n | ɔ k ɛ̃ | ɔ k ɛ̃ n
aucune: o k y n | ɔ k y n
autre: o t ʁ | o t | o t ʁ ə
avant: a v ɑ̃
barre: b a ʁ
bars: b a ʁ
bas: b a
basse: b a s
batterie: b a t ʁ i
biodiesel: b j o d j ə z ɛ l | b j o d j z ɛ l | b j o d j ø z ɛ l | b j ɔ d j ə z ɛ l
blanche: b l ɑ̃ ʃ
blessure: b l ɛ s y ʁ | b l e s y ʁ
blessé: b l ɛ s e | b l e s e
bleue: b l ø
bloque: b l o k
bloqué: b l o k e | b l ɔ k e
bloquée: b l o k e | b l ɔ k e
bon: b ɔ̃
bonne: b ɔ n
bonnes: b ɔ n
bons: b ɔ̃
bouchon: b u ʃ ɔ̃
boulon: b u l ɔ̃
boulons: b u l ɔ̃
branché: b ʁ ɑ̃ ʃ e
branchés: b ʁ ɑ̃ ʃ e
bruit: b ʁ ɥ i
brûlé: b ʁ y l e
bulle: b y l
bulles: b y l | b y l z
c'est: s ɛ | s e
c'était: s e t ɛ | s ɛ t ɛ | s e t e
calé: k a l e
capteurs: k a p t œ ʁ
carburant: k a ʁ b y ʁ ɑ̃
cause: k o z
celsius: s ɛ l s j y s | s e l s j y s
cent: s ɑ̃ | s ɑ̃ t
cette: s ɛ t
champ: ʃ ɑ̃
charge: ʃ a ʁ ʒ
chaud: ʃ o
chaude: ʃ o d
chef: ʃ ɛ f
chose: ʃ ɔ z
cinq: s ɛ̃ k | s ɛ̃
cinquante: s ɛ̃ k ɑ̃ t
circuit: s i ʁ k ɥ i
clair: k l ɛ ʁ
clé: k l e
code: k ɔ d
cogne: k ɔ n j
cognement: k o n j ə m ɑ̃ | k o n j m ɑ̃ | k o n j ø m ɑ̃ | k ɔ n j ə m ɑ̃
collier: k ɔ l j e | k o l j e
combien: k ɔ̃ b j ɛ̃
commande: k ɔ m ɑ̃ d
comme: k ɔ m
compris: k ɔ̃ p ʁ i
conforme: k ɔ̃ f ɔ ʁ m
conformes: k ɔ̃ f ɔ ʁ m | k ɔ̃ f ɔ ʁ m z
congélation: k ɔ̃ ʒ e l a s j ɔ̃ | k ɔ̃ ʒ ɛ l a s j ɔ̃
connecté: k ɔ n ɛ k t e | k ɔ n e k t e | k o n ɛ k t e
connue: k ɔ n y | k o n y
contact: k ɔ̃ t a k t
continue: k ɔ̃ t i n y
continuer: k ɔ̃ t i n y e
correct: k o ʁ ɛ k t | k ɔ ʁ ɛ k t
correcte: k o ʁ ɛ k t | k ɔ ʁ ɛ k t
corrects: k o ʁ ɛ k t | k ɔ ʁ ɛ k t
coude: k u d
coule: k u l
coup: k u
coupe: k u p
coupez: k u p e
couple: k u p l | k u p | k u p l ə
coups: k u
coupure: k u p y ʁ
coupé: k u p e
coupés: k u p e
courroie: k u ʁ w a
courroies: k u ʁ w a
culasse: k y l a s
cylindre: s i l ɛ̃ d ʁ | s i l ɛ̃ d | s i l ɛ̃ d ʁ ə
câblage: k a b l a ʒ
câble: k a b l | k a b | k a b l ə
d'accord: d a k ɔ ʁ
d'air: d ɛ ʁ
d'eau: d o
d'huile: d ɥ i l
d'urgence: d y ʁ ʒ ɑ̃ s
dans: d ɑ̃ | d ɑ̃ z
de: d ə | d | d ø
degrés: d ə ɡ ʁ e | d ɡ ʁ e | d ø ɡ ʁ e
demande: d ə m ɑ̃ d | d ø m ɑ̃ d
derniers: d ɛ ʁ n j e | d e ʁ n j e
desserrée: d ɛ s ɛ ʁ e | d e s e ʁ e
deux: d ø | d ø z
devant: d ə v ɑ̃ | d ø v ɑ̃
dire: d i ʁ
direction: d i ʁ ɛ k s j ɔ̃ | d i ʁ e k s j ɔ̃
disjoncteur: d i z ʒ ɔ̃ k t œ ʁ
disparu: d i s p a ʁ y
dix: d i s | d i | d i z
douze: d u z
du: d y
dure: d y ʁ
durite: d y ʁ i t
durites: d y ʁ i t
débranché: d e b ʁ ɑ̃ ʃ e | d ɛ b ʁ ɑ̃ ʃ e
débrayée: d e b ʁ ɛ j e | d e b ʁ e j e | d ɛ b ʁ ɛ j e
défaillance: d e f a j ɑ̃ s | d ɛ f a j ɑ̃ s
défaut: d e f o | d e f o t | d ɛ f o | d ɛ f o t
dégagée: d e ɡ a ʒ e | d ɛ ɡ a ʒ e
déjà: d e ʒ a | d ɛ ʒ a
démarrage: d e m a ʁ a ʒ | d ɛ m a ʁ a ʒ
démarre: d e m a ʁ | d ɛ m a ʁ
démarrer: d e m a ʁ e | d ɛ m a ʁ e
démarreur: d e m a ʁ œ ʁ | d ɛ m a ʁ œ ʁ
démarré: d e m a ʁ e | d ɛ m a ʁ e
eau: o
emballement: ɑ̃ b a l m ɑ̃
en: ɑ̃ | ɑ̃ n
encore: ɑ̃ k ɔ ʁ
essence: e s ɑ̃ s
est: ɛ | ɛ t | e
et: e
exercice: ɛ ɡ z ɛ ʁ s i s | e ɡ z e ʁ s i s
extincteur: ɛ k s t ɛ̃ k t œ ʁ | e k s t ɛ̃ k t œ ʁ
extraction: ɛ k s t ʁ a k s j ɔ̃ | e k s t ʁ a k s j ɔ̃
fahrenheit: f a ʁ ə n a j t | f a ʁ n a j t | f a ʁ ø n a j t
faible: f ɛ b l | f ɛ b | f ɛ b l ə
fait: f ɛ | f ɛ t | f e
fausse: f o s
faux: f o
fendu: f ɑ̃ d y
ferme: f ɛ ʁ m
fermé: f ɛ ʁ m e | f e ʁ m e
fermée: f ɛ ʁ m e | f e ʁ m e
fiche: f i ʃ
filtre: f i l t ʁ | f i l t | f i l t ʁ ə
filtres: f i l t ʁ | f i l t | f i l t ʁ ə
fini: f i n i
fixe: f i k s
fois: f w a
fort: f ɔ ʁ
froid: f ʁ w a
froide: f ʁ w a d
fuit: f ɥ i
fuite: f ɥ i t
fumée: f y m e
galeries: ɡ a l ə ʁ i | ɡ a l ə ʁ i z | ɡ a l ʁ i | ɡ a l ø ʁ i | ɡ a l ʁ i z | ɡ a l ø ʁ i z
gallons: ɡ a l ɔ̃ | ɡ a l ɔ̃ z
gauche: ɡ o ʃ
gaz: ɡ a z
gazole: ɡ a z ɔ l
gicle: ʒ i k l | ʒ i k | ʒ i k l ə
goutte: ɡ u t
gouttes: ɡ u t
grade: ɡ ʁ a d
grince: ɡ ʁ ɛ̃ s
grincement: ɡ ʁ ɛ̃ s m ɑ̃
groupe: ɡ ʁ u p
halle: a l
halte: a l t
haut: o
huile: ɥ i l
huilé: ɥ i l e
huilés: ɥ i l e
huit: ɥ i t | ɥ i
huitante: ɥ i t ɑ̃ t
il: i l
immobilisé: i m o b i l i z e | i m ɔ b i l i z e
incendie: ɛ̃ s ɑ̃ d i
injecteur: ɛ̃ ʒ ɛ k t œ ʁ | ɛ̃ ʒ e k t œ ʁ
injection: ɛ̃ ʒ ɛ k s j ɔ̃ | ɛ̃ ʒ e k s j ɔ̃
instant: ɛ̃ s t ɑ̃
isolé: i z o l e | i z ɔ l e
j'ai: ʒ e
jauge: ʒ o ʒ
je: ʒ ə | ʒ | ʒ ø
jet: ʒ ɛ | ʒ e
joint: ʒ w ɛ̃
kilopascals: k i l o p a s k a l | k i l ɔ p a s k a l
l'air: l ɛ ʁ
l'eau: l o
l'exercice: l ɛ ɡ z ɛ ʁ s i s | l e ɡ z e ʁ s i s
l'extincteur: l ɛ k s t ɛ̃ k t œ ʁ | l e k s t ɛ̃ k t œ ʁ
l'huile: l ɥ i l
l'injection: l ɛ̃ ʒ ɛ k s j ɔ̃ | l ɛ̃ ʒ e k s j ɔ̃
l'échappement: l e ʃ a p m ɑ̃ | l ɛ ʃ a p m ɑ̃
la: l a
laisser: l ɛ s e | l e s e
le: l ə | l | l ø
lent: l ɑ̃
les: l e | l e z
levier: l ə v j e | l v j e | l ø v j e
libre: l i b ʁ | l i b | l i b ʁ ə
liquide: l i k i d
lire: l i ʁ
liste: l i s t
litres: l i t ʁ | l i t | l i t ʁ ə
loupe: l u p
lourd: l u ʁ
là: l a
léger: l e ʒ e | l ɛ ʒ e
machine: m a ʃ i n
manchons: m ɑ̃ ʃ ɔ̃ | m ɑ̃ ʃ ɔ̃ z
manuel: m a n y ɛ l
marche: m a ʁ ʃ
marqués: m a ʁ k e
masse: m a s
mauvais: m o v ɛ | m ɔ v ɛ | m o v e
mesuré: m ə z y ʁ e | m z y ʁ e | m ø z y ʁ e
mille: m i l
minimale: m i n i m a l
minimum: m i n i m ɔ m
minute: m i n y t
mises: m i z
mode: m ɔ d
moins: m w ɛ̃ | m w ɛ̃ z
monte: m ɔ̃ t
monté: m ɔ̃ t e
montée: m ɔ̃ t e
moteur: m o t œ ʁ | m ɔ t œ ʁ
mousse: m u s
mètres: m ɛ t ʁ | m ɛ t | m ɛ t ʁ ə
mélange: m e l ɑ̃ ʒ
mélangé: m e l ɑ̃ ʒ e | m ɛ l ɑ̃ ʒ e
n'y: n i
ne: n ə | n | n ø
neuf: n œ f
neutralisation: n ø t ʁ a l i z a s j ɔ̃
neutralisée: n ø t ʁ a l i z e
neutre: n ø t ʁ | n ø t | n ø t ʁ ə
niveau: n i v o
niveaux: n i v o
noire: n w a ʁ
non: n ɔ̃
nonante: n o n ɑ̃ t
normal: n ɔ ʁ m a l | n o ʁ m a l
normaux: n ɔ ʁ m o | n o ʁ m o
noté: n o t e | n ɔ t e
notés: n o t e | n ɔ t e
nous: n u
nuit: n ɥ i
numéro: n y m e ʁ o | n y m ɛ ʁ o
négatif: n e ɡ a t i f | n ɛ ɡ a t i f
odeur: o d œ ʁ | ɔ d œ ʁ
ok: o k e | ɔ k e
on: ɔ̃ | ɔ̃ n
onze: ɔ̃ z
ordre: ɔ ʁ d ʁ | ɔ ʁ d | ɔ ʁ d ʁ ə
ou: u
oublié: u b l i e
oui: w i
outil: u t i
outils: u t i
ouvert: u v ɛ ʁ
où: u
par: p a ʁ
pareil: p a ʁ ɛ j
pas: p a | p a z
passer: p a s e
pause: p o z
perte: p ɛ ʁ t
peut: p ø | p ø t
pieds: p j e
pièce: p j ɛ s
place: p l a s
plein: p l ɛ̃
plus: p l y | p l y z
point: p w ɛ̃
points: p w ɛ̃
pompage: p ɔ̃ p a ʒ
pompe: p ɔ̃ p
pompée: p ɔ̃ p e
poste: p ɔ s t
pour: p u ʁ
premiers: p ʁ ə m j e | p ʁ m j e | p ʁ ø m j e
pression: p ʁ ɛ s j ɔ̃ | p ʁ e s j ɔ̃
prise: p ʁ i z
problème: p ʁ ɔ b l ɛ m | p ʁ o b l ɛ m
propre: p ʁ ɔ p ʁ | p ʁ ɔ p | p ʁ ɔ p ʁ ə
protections: p ʁ o t ɛ k s j ɔ̃ | p ʁ o t ɛ k s j ɔ̃ z | p ʁ o t e k s j ɔ̃ | p ʁ ɔ t ɛ k s j ɔ̃ | p ʁ o t e k s j ɔ̃ z | p ʁ ɔ t ɛ k s j ɔ̃ z
précédente: p ʁ e s e d ɑ̃ t | p ʁ ɛ s e d ɑ̃ t
prête: p ʁ ɛ t
psi: p s i | p e ɛ s i
puis: p ɥ i
purge: p y ʁ ʒ
purgé: p y ʁ ʒ e
quarante: k a ʁ ɑ̃ t
quarts: k a ʁ | k a ʁ z
quatorze: k a t ɔ ʁ z
quatre: k a t ʁ | k a t | k a t ʁ ə
que: k ə | k | k ø
quelqu'un: k ɛ l k ɛ̃ | k e l k ɛ̃
quelque: k ɛ l k ə | k ɛ l k ø | k e l k ə
quinze: k ɛ̃ z
radiateur: ʁ a d j a t œ ʁ
ralenti: ʁ a l ɑ̃ t i
rapide: ʁ a p i d
raté: ʁ a t e
refroidissement: ʁ ə f ʁ w a d i s m ɑ̃ | ʁ f ʁ w a d i s m ɑ̃ | ʁ ø f ʁ w a d i s m ɑ̃
refus: ʁ ə f y | ʁ f y | ʁ ø f y
regarde: ʁ ə ɡ a ʁ d | ʁ ɡ a ʁ d | ʁ ø ɡ a ʁ d
remis: ʁ ə m i | ʁ m i | ʁ ø m i
rempli: ʁ ɑ̃ p l i
rendu: ʁ ɑ̃ d y
reprend: ʁ ə p ʁ ɑ̃ | ʁ ø p ʁ ɑ̃
restant: ʁ ɛ s t ɑ̃
reste: ʁ ɛ s t
retirée: ʁ ə t i ʁ e | ʁ t i ʁ e | ʁ ø t i ʁ e
retour: ʁ ə t u ʁ | ʁ t u ʁ | ʁ ø t u ʁ
revissée: ʁ ə v i s e | ʁ v i s e | ʁ ø v i s e
rien: ʁ i ɛ̃ | ʁ i ɛ̃ n | ʁ j ɛ̃ n
rotation: ʁ o t a s j ɔ̃ | ʁ ɔ t a s j ɔ̃
rouge: ʁ u ʒ
route: ʁ u t
réchauffeur: ʁ e ʃ o f œ ʁ | ʁ ɛ ʃ o f œ ʁ | ʁ e ʃ ɔ f œ ʁ
régime: ʁ e ʒ i m | ʁ ɛ ʒ i m
régénération: ʁ e ʒ e n e ʁ a s j ɔ̃ | ʁ ɛ ʒ ɛ n ɛ ʁ a s j ɔ̃
répète: ʁ e p ɛ t | ʁ ɛ p ɛ t
répéter: ʁ e p e t e | ʁ ɛ p ɛ t e
réservoir: ʁ e z ɛ ʁ v w a ʁ | ʁ e z e ʁ v w a ʁ | ʁ ɛ z ɛ ʁ v w a ʁ
rétablie: ʁ e t a b l i | ʁ ɛ t a b l i
sale: s a l
salle: s a l
sans: s ɑ̃
sec: s ɛ k
secondes: s ə ɡ ɔ̃ d | s ɡ ɔ̃ d | s ø ɡ ɔ̃ d
seize: s ɛ z
sept: s ɛ t
septante: s ɛ p t ɑ̃ t
serrage: s ɛ ʁ a ʒ | s e ʁ a ʒ
serrer: s ɛ ʁ e | s e ʁ e
serré: s ɛ ʁ e | s e ʁ e
serrés: s ɛ ʁ e | s ɛ ʁ e z | s e ʁ e | s e ʁ e z
service: s ɛ ʁ v i s | s e ʁ v i s
signaler: s i n j a l e
signe: s i n j
signé: s i n j e
simple: s ɛ̃ p l | s ɛ̃ p | s ɛ̃ p l ə
situation: s i t y a s j ɔ̃
six: s i s | s i | s i z
soixante: s w a s ɑ̃ t
sommes: s ɔ m
sont: s ɔ̃ | s ɔ̃ t
sortis: s ɔ ʁ t i | s o ʁ t i
soupapes: s u p a p
soupe: s u p
stable: s t a b l | s t a b | s t a b l ə
stock: s t ɔ k
stop: s t ɔ p
stoppez: s t ɔ p e | s t o p e
suinte: s y ɛ̃ t
suintement: s y ɛ̃ t m ɑ̃
suivant: s ɥ i v ɑ̃
suivants: s ɥ i v ɑ̃
support: s y p ɔ ʁ
surchauffe: s y ʁ ʃ o f
surface: s y ʁ f a s
surrégime: s y ʁ ʁ e ʒ i m | s y ʁ ʁ ɛ ʒ i m
séance: s e ɑ̃ s
sûr: s y ʁ
temps: t ɑ̃
température: t ɑ̃ p e ʁ a t y ʁ | t ɑ̃ p ɛ ʁ a t y ʁ
tendu: t ɑ̃ d y
tension: t ɑ̃ s j ɔ̃
terminer: t ɛ ʁ m i n e | t e ʁ m i n e
terminée: t ɛ ʁ m i n e | t e ʁ m i n e
testeur: t ɛ s t œ ʁ | t e s t œ ʁ
thermostat: t ɛ ʁ m o s t a | t e ʁ m o s t a | t ɛ ʁ m ɔ s t a
tirer: t i ʁ e
tiède: t j ɛ d
top: t ɔ p
toujours: t u ʒ u ʁ
tourne: t u ʁ n
tours: t u ʁ
tout: t u | t u t
traite: t ʁ ɛ t
treize: t ʁ ɛ z
trente: t ʁ ɑ̃ t
trois: t ʁ w a | t ʁ w a z
troisièmes: t ʁ w a z j ɛ m
trop: t ʁ o
turbo: t y ʁ b o
tuyau: t ɥ i j o
un: ɛ̃ | ɛ̃ n
une: y n
usé: y z e
vanne: v a n
ventilateur: v ɑ̃ t i l a t œ ʁ
verrouillé: v ɛ ʁ u j e | v e ʁ u j e
versée: v ɛ ʁ s e | v e ʁ s e
vibration: v i b ʁ a s j ɔ̃
vide: v i d
vingt: v ɛ̃ | v ɛ̃ t
virgule: v i ʁ ɡ y l
vis: v i
volts: v ɔ l t
voyant: v w a j ɑ̃
voyants: v w a j ɑ̃
véhicule: v e i k y l | v ɛ i k y l
vérifié: v e ʁ i f j e | v ɛ ʁ i f j e
vérifiée: v e ʁ i f j e | v ɛ ʁ i f j e
y: i ɡ ʁ ɛ k | i
zone: z o n
zéro: z e ʁ o | z ɛ ʁ o
à: a
ça: s a
échappement: e ʃ a p m ɑ̃ | ɛ ʃ a p m ɑ̃
épaisse: e p ɛ s | ɛ p ɛ s
équipier: e k i p j e | ɛ k i p j e
équipé: e k i p e | ɛ k i p e
étape: e t a p | ɛ t a p
éteint: e t ɛ̃ | ɛ t ɛ̃
`;

const pronunciations: ReadonlyMap<string, readonly string[]> = new Map(
  lines
    .trim()
    .split('\n')
    .map(line => line.split(': '))
    .map(([word = '', phones = '']) => [word, phones.split(' | ')]),
);

/** All pronunciations of a French word that may be said; none for any other. */
export const pronounceFrench = (word: string): readonly string[] => pronunciations.get(word) ?? [];
