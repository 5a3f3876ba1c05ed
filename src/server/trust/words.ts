import type { LanguageCode } from '../../../prompts/types.ts';

/** The words of the page that tells how a device comes to trust the laptop, in one language. */
export interface TrustWords {
  readonly title: string;
  readonly why: string;
  readonly compare: string;
  readonly fingerprint: string;
  readonly take: string;
  readonly limits: string;
  readonly systems: readonly { readonly name: string; readonly steps: readonly string[] }[];
  readonly back: string;
}

const english: TrustWords = {
  title: 'Trust this laptop',
  why: 'This laptop has an authority of its own, made on its first run. A device that trusts it opens the page without a warning, and can keep the page for use without a network.',
  compare:
    'First compare the figures below with those that the terminal of the laptop shows. Where a single one differs, somebody stands between this device and the laptop: go no further.',
  fingerprint: 'SHA-256 of the authority',
  take: 'Take the certificate of the authority',
  limits:
    'It can vouch for the addresses of private networks and of this laptop only: with its key nobody can imitate a site of the world at large. To end the trust, remove it at the same place.',
  systems: [
    {
      name: 'Android',
      steps: [
        'Take the certificate; it is saved as a file.',
        'Settings, Security, More security settings, Encryption and credentials, Install a certificate, CA certificate. In some versions it is easier found by searching the settings for "certificate".',
        'Confirm the warning, and choose the file among the downloads.',
        'Close the browser wholly and open the page again.',
      ],
    },
    {
      name: 'iPhone, iPad',
      steps: [
        'Take the certificate in Safari, and allow the profile to be downloaded.',
        'Settings, General, VPN and device management: choose the profile "first-fire" and install it.',
        'Settings, General, About, Certificate trust settings: turn full trust on for "first-fire".',
        'Open the page again in Safari.',
      ],
    },
    {
      name: 'Windows',
      steps: [
        'Take the certificate and open the file: Install certificate.',
        'Current user; Place all certificates in the following store: Trusted root certification authorities.',
        'Confirm the warning after comparing the figures, then close the browser wholly and open the page again.',
      ],
    },
    {
      name: 'Debian and its like, with Chromium',
      steps: [
        'certutil -d sql:$HOME/.pki/nssdb -A -t C,, -n first-fire -i first-fire-authority.crt (package libnss3-tools).',
        'Close the browser wholly and open the page again.',
      ],
    },
  ],
  back: 'Open the page',
};

const french: TrustWords = {
  title: 'Faire confiance à ce portable',
  why: "Ce portable a sa propre autorité, créée à sa première mise en marche. Un appareil qui lui fait confiance ouvre la page sans avertissement et peut la garder pour s'en servir sans réseau.",
  compare:
    "Comparez d'abord les chiffres ci-dessous avec ceux que montre le terminal du portable. Si un seul diffère, quelqu'un se tient entre cet appareil et le portable : n'allez pas plus loin.",
  fingerprint: "SHA-256 de l'autorité",
  take: "Prendre le certificat de l'autorité",
  limits:
    "Elle ne peut répondre que des adresses de réseaux privés et de ce portable : avec sa clé, personne n'imite un site du monde extérieur. Pour retirer la confiance, supprimez-la au même endroit.",
  systems: [
    {
      name: 'Android',
      steps: [
        'Prenez le certificat ; il est enregistré comme fichier.',
        'Paramètres, Sécurité, Autres paramètres de sécurité, Chiffrement et identifiants, Installer un certificat, Certificat CA. Dans certaines versions, cherchez « certificat » dans les paramètres.',
        "Confirmez l'avertissement et choisissez le fichier parmi les téléchargements.",
        'Fermez entièrement le navigateur et ouvrez de nouveau la page.',
      ],
    },
    {
      name: 'iPhone, iPad',
      steps: [
        'Prenez le certificat dans Safari et autorisez le téléchargement du profil.',
        'Réglages, Général, VPN et gestion des appareils : choisissez le profil « first-fire » et installez-le.',
        'Réglages, Général, Informations, Réglages des certificats : activez la confiance totale pour « first-fire ».',
        'Ouvrez de nouveau la page dans Safari.',
      ],
    },
    {
      name: 'Windows',
      steps: [
        'Prenez le certificat et ouvrez le fichier : Installer un certificat.',
        'Utilisateur actuel ; Placer tous les certificats dans le magasin suivant : Autorités de certification racines de confiance.',
        "Confirmez l'avertissement après avoir comparé les chiffres, puis fermez entièrement le navigateur et ouvrez de nouveau la page.",
      ],
    },
    {
      name: 'Debian et semblables, avec Chromium',
      steps: [
        'certutil -d sql:$HOME/.pki/nssdb -A -t C,, -n first-fire -i first-fire-authority.crt (paquet libnss3-tools).',
        'Fermez entièrement le navigateur et ouvrez de nouveau la page.',
      ],
    },
  ],
  back: 'Ouvrir la page',
};

const spanish: TrustWords = {
  title: 'Confiar en este portátil',
  why: 'Este portátil tiene su propia autoridad, creada en su primera puesta en marcha. Un aparato que confía en ella abre la página sin advertencia, y puede guardarla para usarla sin red.',
  compare:
    'Compare primero las cifras de abajo con las que muestra el terminal del portátil. Si una sola difiere, alguien está entre este aparato y el portátil: no siga.',
  fingerprint: 'SHA-256 de la autoridad',
  take: 'Tomar el certificado de la autoridad',
  limits:
    'Solo puede responder por direcciones de redes privadas y de este portátil: con su clave nadie puede imitar un sitio del resto del mundo. Para retirar la confianza, quítela en el mismo sitio.',
  systems: [
    {
      name: 'Android',
      steps: [
        'Tome el certificado; se guarda como archivo.',
        'Ajustes, Seguridad, Más ajustes de seguridad, Cifrado y credenciales, Instalar un certificado, Certificado de CA. En algunas versiones es más fácil buscar «certificado» en los ajustes.',
        'Confirme la advertencia, y elija el archivo entre las descargas.',
        'Cierre del todo el navegador y abra otra vez la página.',
      ],
    },
    {
      name: 'iPhone, iPad',
      steps: [
        'Tome el certificado en Safari, y permita descargar el perfil.',
        'Ajustes, General, VPN y gestión de dispositivos: elija el perfil «first-fire» e instálelo.',
        'Ajustes, General, Información, Ajustes de confianza de certificados: active la confianza total en «first-fire».',
        'Abra otra vez la página en Safari.',
      ],
    },
    {
      name: 'Windows',
      steps: [
        'Tome el certificado y abra el archivo: Instalar certificado.',
        'Usuario actual; Colocar todos los certificados en el siguiente almacén: Entidades de certificación raíz de confianza.',
        'Confirme la advertencia tras comparar las cifras, cierre del todo el navegador y abra otra vez la página.',
      ],
    },
    {
      name: 'Debian y parecidos, con Chromium',
      steps: [
        'certutil -d sql:$HOME/.pki/nssdb -A -t C,, -n first-fire -i first-fire-authority.crt (paquete libnss3-tools).',
        'Cierre del todo el navegador y abra otra vez la página.',
      ],
    },
  ],
  back: 'Abrir la página',
};

/** By language code; English is what everybody else gets. */
export const trustWords: Readonly<Record<LanguageCode, TrustWords>> = {
  en: english,
  fr: french,
  es: spanish,
};
