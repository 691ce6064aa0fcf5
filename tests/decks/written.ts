/**
 * Lessons, reports and backups as every version of their forms was written, by the program of its day: text that nobody
 * writes any more, or will not one day, and that students and teachers have in their messages and files.
 */

/** A lesson's link, and what the program that wrote it made of it. */
export interface FormerLesson {
  readonly version: number;
  readonly link: string;
  /** The document that was written as the link. */
  readonly document: unknown;
  readonly id: string;
  /** The ids of its items, in their order. */
  readonly items: readonly string[];
}

export const LESSONS: readonly FormerLesson[] = [
  {
    version: 1,
    link: 'https://skipwise.example/#/lesson/AQCPHcbRCoIwFADQ935ilz3Lbbtecwg9RFgfkD8wdZThnDlHSPTvQefpNMnF3m4ZvJLdIA69E7cxvMcNd83DTRCmzoEPi0NBig6alBF1C94-wyI-crLeyUre07DaRWays3OQFX1FVFgwaoOaC5g1ck5IJawKU0SjkApREpz5qPc51C3DleHC_53yH3_uH3Y',
    document: {
      version: 1,
      title: 'Tuesday, quay side',
      note: 'Slowly.\nThen once more.',
      lessonDay: '2026-12-08',
      instrument: {
        name: 'guitar',
        capo: 2,
      },
      key: 'Eb major',
      drills: [
        {
          kind: 'spot',
          degrees: [1, 4, 5],
          sizes: ['triad'],
          strings: ['5-4'],
          frets: [1, 8],
        },
        {
          kind: 'place',
          sizes: ['seventh'],
          strings: ['4-3-2'],
          frets: [2, 7],
        },
        {
          kind: 'trace',
          degrees: [2, 5],
          sizes: ['triad'],
          contours: ['up', 'skip'],
          tempo: 80,
        },
      ],
      phrases: [
        {
          tempo: 72,
          notes: ['C4 for 1/3', 'Eb4', 'G4', 'F4', 'Eb4', 'A3'],
        },
      ],
    },
    id: 'd94b0907f407ca16',
    items: [
      'spot:Eb major:1:triad:guitar+2:5-4:1-7',
      'spot:Eb major:1:triad:guitar+2:5-4:2-8',
      'spot:Eb major:4:triad:guitar+2:5-4:1-7',
      'spot:Eb major:4:triad:guitar+2:5-4:2-8',
      'spot:Eb major:5:triad:guitar+2:5-4:1-7',
      'spot:Eb major:5:triad:guitar+2:5-4:2-8',
      'place:Eb major:1:seventh:guitar+2:4-3-2:2-6',
      'place:Eb major:1:seventh:guitar+2:4-3-2:3-7',
      'place:Eb major:2:seventh:guitar+2:4-3-2:2-6',
      'place:Eb major:2:seventh:guitar+2:4-3-2:3-7',
      'place:Eb major:3:seventh:guitar+2:4-3-2:2-6',
      'place:Eb major:3:seventh:guitar+2:4-3-2:3-7',
      'place:Eb major:4:seventh:guitar+2:4-3-2:2-6',
      'place:Eb major:4:seventh:guitar+2:4-3-2:3-7',
      'place:Eb major:5:seventh:guitar+2:4-3-2:2-6',
      'place:Eb major:5:seventh:guitar+2:4-3-2:3-7',
      'place:Eb major:6:seventh:guitar+2:4-3-2:2-6',
      'place:Eb major:6:seventh:guitar+2:4-3-2:3-7',
      'place:Eb major:7:seventh:guitar+2:4-3-2:2-6',
      'place:Eb major:7:seventh:guitar+2:4-3-2:3-7',
      'trace:Eb major:2:triad:guitar+2:up:80',
      'trace:Eb major:2:triad:guitar+2:skip:80',
      'trace:Eb major:5:triad:guitar+2:up:80',
      'trace:Eb major:5:triad:guitar+2:skip:80',
    ],
  },
  {
    version: 1,
    link: 'https://skipwise.example/#/lesson/AQCHNYpNCsMgGAWP4su-aj41CoEs-n-D7k0j1DatoEJ2PXtx0beZYXintH1QHwGl-pjLDrO_vzafl8IYO8x4-2fKjCVkrKgkqrA2oPRCK0EOUzOuBHEnqG8bmFM4momkHrUccJ7NqKTB1YwkNS4N9K_fssYlYN-uCh1xHSM6w-3N_QANaO4z',
    document: {
      version: 1,
      title: 'Down the stairs, backwards',
      instrument: 'guitar',
      key: 'Bb major',
      drills: [
        {
          kind: 'outline',
        },
        {
          kind: 'order',
        },
        {
          kind: 'fill',
        },
        {
          kind: 'trace',
          sizes: ['seventh'],
          contours: ['turn'],
          tempo: 66,
          rhythm: 'eighths',
        },
        {
          kind: 'spot',
          sizes: ['triad'],
          strings: ['3-2'],
          frets: [1, 7],
        },
      ],
      phrases: [
        {
          tempo: 72,
          notes: [
            'C4 for 1/3 on 3/5',
            'Eb4 on 2/4',
            'G4 on 1/3',
            'F4 on 1/1',
            'Eb4 on 2/4 by slide',
            'A3 on 3/2',
          ],
          outline: ['1-3 ii', '4-6 V7'],
        },
      ],
      marks: {
        'spot 1 triad 3-2 1-7': 1,
        'spot 7 triad 3-2 1-7': 5,
      },
    },
    id: '2916540c45804511',
    items: [
      'outline:Bb major:2:triad:guitar:ii 3/5 2/4 1/3',
      'outline:Bb major:5:seventh:guitar:V7 1/1 2/4 3/2',
      'fill:Bb major:4:triad:guitar:72 ii 3/5 2/4? 1/3 V7 1/1 2/4 3/2',
      'fill:Bb major:4:seventh:guitar:72 ii 3/5 2/4 1/3 V7 1/1 2/4? 3/2',
      'trace:Bb major:1:seventh:guitar:turn:66:eighths',
      'trace:Bb major:2:seventh:guitar:turn:66:eighths',
      'trace:Bb major:3:seventh:guitar:turn:66:eighths',
      'trace:Bb major:4:seventh:guitar:turn:66:eighths',
      'trace:Bb major:5:seventh:guitar:turn:66:eighths',
      'trace:Bb major:6:seventh:guitar:turn:66:eighths',
      'trace:Bb major:7:seventh:guitar:turn:66:eighths',
      'spot:Bb major:1:triad:guitar:3-2:1-7',
      'spot:Bb major:3:triad:guitar:3-2:1-7',
      'spot:Bb major:5:triad:guitar:3-2:1-7',
      'spot:Bb major:7:triad:guitar:3-2:1-7',
    ],
  },
  {
    version: 2,
    link: 'https://skipwise.example/#/lesson/AgBQC85JTM5WKE8sSS2Sl5d3V8hILMrNz8tMVsjNzMsvkpevNNAzNdEztChNMTPQMzRVSDXQK9UzN9IzVCg10jMz0AEzC6CK9AzNAfvbd70',
    document: {
      version: 2,
      title: 'Slack water',
      instrument: 'guitar',
      key: 'G harmonic minor',
      drills: [
        {
          kind: 'play',
          degrees: [1, 5],
          sizes: ['triad'],
          strings: ['5-4'],
          frets: [1, 8],
          ways: ['up', 'down'],
          tempo: 60,
        },
        {
          kind: 'echo',
          degrees: [1],
          sizes: ['triad'],
          contours: ['up'],
          tempo: 72,
        },
        {
          kind: 'pulse',
          figures: ['triplets'],
          tempos: [60, 72],
          clicks: ['bar'],
        },
        {
          kind: 'place',
          degrees: [1, 7],
          sizes: ['triad'],
          strings: ['5-4'],
          frets: [1, 8],
        },
      ],
    },
    id: 'eca936852cf83f9b',
    items: [
      'play:G harmonic minor:1:triad:guitar:5-4:1-7:up:60',
      'play:G harmonic minor:1:triad:guitar:5-4:1-7:down:60',
      'play:G harmonic minor:1:triad:guitar:5-4:2-8:up:60',
      'play:G harmonic minor:1:triad:guitar:5-4:2-8:down:60',
      'play:G harmonic minor:5:triad:guitar:5-4:1-7:up:60',
      'play:G harmonic minor:5:triad:guitar:5-4:1-7:down:60',
      'play:G harmonic minor:5:triad:guitar:5-4:2-8:up:60',
      'play:G harmonic minor:5:triad:guitar:5-4:2-8:down:60',
      'echo:G harmonic minor:1:triad:guitar:up:72',
      'pulse:G harmonic minor:1:triad:guitar:triplets:60:bar',
      'pulse:G harmonic minor:1:triad:guitar:triplets:72:bar',
      'place:G harmonic minor:1:triad:guitar:5-4:1-7',
      'place:G harmonic minor:1:triad:guitar:5-4:2-8',
      'place:G harmonic minor:7:triad:guitar:5-4:1-7',
      'place:G harmonic minor:7:triad:guitar:5-4:2-8',
    ],
  },
  {
    version: 3,
    link: 'https://skipwise.example/#/lesson/AwCAC8lIVUhLLSqqfNQws1ghvzxPISk1sUReXt4pSSE3MSu_SL5aKS8xN1XJSsnF0cXd0UVJRyknNa3EIzEvJTVFyaqkqDS1Vr7UWM_MTM9IIV_e3MjBWMHZxNZQ31jBNclEwd1Ewc0EzHI0VlA01DXOzFRQNNE1CzMHAFKxUGs',
    document: {
      version: 3,
      title: 'The ferry’s own beat',
      instrument: {
        name: 'DADGAD',
        leftHanded: true,
      },
      key: 'Bb major',
      drills: [
        {
          kind: 'pulse',
          figures: ['phrase'],
          tempos: [66],
          clicks: ['gone'],
        },
        {
          kind: 'outline',
        },
      ],
      phrases: [
        {
          tempo: 72,
          notes: ['C4 for 1/3', 'Eb4', 'G4', 'F4', 'Eb4', 'A3'],
          hand: 'at fret 3',
          outline: ['1-3 ii', '4-6 V7'],
        },
      ],
    },
    id: '56b59e5d595e47ce',
    items: [
      'pulse:Bb major:1:triad:DADGAD:phrase:1/3x6:66:gone',
      'outline:Bb major:2:triad:DADGAD:ii 3/5 2/6 1/5',
      'outline:Bb major:5:seventh:DADGAD:V7 1/3 2/6 3/2',
    ],
  },
  {
    version: 4,
    link: 'https://skipwise.example/#/lesson/BAA3C8rPL1FISs3JL5eXl3dKUshNzMovkpcvNtAzNdEztChSKDDQMzE20jO0yNQzNAEAZabWXg',
    document: {
      version: 4,
      title: 'Root below',
      instrument: 'guitar',
      key: 'Bb major',
      drills: [
        {
          kind: 'spot',
          sizes: ['triad'],
          strings: ['5-4'],
          frets: [1, 8],
          shapes: 'root position',
        },
        {
          kind: 'place',
          degrees: [1, 4],
          sizes: ['triad'],
          strings: ['4-3-2'],
          frets: [1, 8],
          shapes: 'inversions',
        },
      ],
    },
    id: 'dd1fdc12d606952c',
    items: [
      'spot:Bb major:1:triad:guitar:5-4:1-7:root',
      'spot:Bb major:2:triad:guitar:5-4:1-7:root',
      'spot:Bb major:2:triad:guitar:5-4:2-8:root',
      'spot:Bb major:3:triad:guitar:5-4:1-7:root',
      'spot:Bb major:3:triad:guitar:5-4:2-8:root',
      'spot:Bb major:4:triad:guitar:5-4:2-8:root',
      'place:Bb major:1:triad:guitar:4-3-2:1-5:inversions',
      'place:Bb major:4:triad:guitar:4-3-2:1-5:inversions',
      'place:Bb major:4:triad:guitar:4-3-2:4-8:inversions',
    ],
  },
];

/** A report's link on the first of these lessons, and what the program that wrote it read of it. */
export interface FormerReport {
  readonly version: number;
  readonly link: string;
}

export const REPORTS: readonly FormerReport[] = [
  {
    version: 1,
    link: 'https://skipwise.example/#/report/AQBkV2h5IGlzIGlpIG5vdCBJVj8fTWFyZWlrZQDdaWSLB1vNFVEujyAAAKoAPQAXtiOABgfhtNR8AXrMAizoY1phoHZmp3YIE4tpyjyBAwZyYDpKfsAcZptsdlCkaA1wp8TXBw',
  },
  {
    version: 2,
    link: 'https://skipwise.example/#/report/AgBoV2h5IGlzIGlpIG5vdCBJVj8fTWFyZWlrZQDdaWSLB1vNFVEujyAAAKoAPQAXwxHB____-AwPw2mo-AF6zAIs6GNaYaB2Zqd2CBOLaco8gQMGcmA6Sn7AHGabbHZQpGgNcJ35awg',
  },
  {
    version: 3,
    link: 'https://skipwise.example/#/report/AwBoV2h5IGlzIGlpIG5vdCBJVj8fTWFyZWlrZQDdaWSLB1vNFVEujyAAAKoAPQALAAPuxjwAADAQAYBAYpDaJ81FyIepAe1Q5iHiQ9ieNQBykPIn7UMYhskB-VD2IYpDaJ81AC72Kcg',
  },
  {
    version: 4,
    link: 'https://skipwise.example/#/report/BABvV2h5IGlzIGlpIG5vdCBJVj8fTWFyZWlrZQDdaWSLB1vNFVEujyAAAKoAPQALAAPuxjwACiszqEYZpHgMBABgEBikNonzUXIh6kB7VDmIeJD2J41AHKQ8iftQxiGyQH5UPYhikNonzUAajLG-',
  },
];

/**
 * Backups: twelve answers on the first of these lessons, that lesson, a record of a version yet to come, and from version
 * 2 on a draft and a report, from 3 on a free minute, from 4 on a timing.
 */
export const BACKUPS: readonly { readonly version: number; readonly text: string }[] = [
  {
    version: 1,
    text: [
      '{"skipwise":"backup","version":1,"written":"2026-11-25T18:05:00.000Z","decks":1,"reviews":12,"aside":1}',
      '{"deck":{"id":"d94b0907f407ca16","document":{"version":1,"title":"Tuesday, quay side","note":"Slowly.\\nThen once more.","lessonDay":"2026-12-08","instrument":{"name":"guitar","capo":2},"key":"Eb major","drills":[{"kind":"spot","degrees":[1,4,5],"sizes":["triad"],"strings":["5-4"],"frets":[1,8]},{"kind":"place","sizes":["seventh"],"strings":["4-3-2"],"frets":[2,7]},{"kind":"trace","degrees":[2,5],"sizes":["triad"],"contours":["up","skip"],"tempo":80}],"phrases":[{"tempo":72,"notes":["C4 for 1/3","Eb4","G4","F4","Eb4","A3"]}]},"added":1795429900000,"away":false}}',
      '{"review":{"device":"0b5f7c1e-44aa-4c1e-9f0a-5d1b1f0e7a11","n":1,"item":"spot:Eb major:1:triad:guitar+2:5-4:1-7","seed":1000,"at":1795542420000,"offset":60,"right":true,"takenFor":null,"ms":3200,"sounded":0,"taps":1,"hidden":false,"grade":3}}',
      '{"review":{"device":"0b5f7c1e-44aa-4c1e-9f0a-5d1b1f0e7a11","n":2,"item":"spot:Eb major:1:triad:guitar+2:5-4:2-8","seed":1001,"at":1795542510000,"offset":60,"right":true,"takenFor":null,"ms":3300,"sounded":0,"taps":1,"hidden":false,"grade":3}}',
      '{"review":{"device":"0b5f7c1e-44aa-4c1e-9f0a-5d1b1f0e7a11","n":3,"item":"spot:Eb major:4:triad:guitar+2:5-4:1-7","seed":1002,"at":1795542600000,"offset":60,"right":false,"takenFor":"5","ms":3400,"sounded":0,"taps":1,"hidden":false,"grade":1}}',
      '{"review":{"device":"0b5f7c1e-44aa-4c1e-9f0a-5d1b1f0e7a11","n":4,"item":"spot:Eb major:4:triad:guitar+2:5-4:2-8","seed":1003,"at":1795542690000,"offset":60,"right":true,"takenFor":null,"ms":3500,"sounded":0,"taps":1,"hidden":false,"grade":3}}',
      '{"review":{"device":"0b5f7c1e-44aa-4c1e-9f0a-5d1b1f0e7a11","n":5,"item":"spot:Eb major:5:triad:guitar+2:5-4:1-7","seed":1004,"at":1795542780000,"offset":60,"right":true,"takenFor":null,"ms":3600,"sounded":0,"taps":1,"hidden":false,"grade":3}}',
      '{"review":{"device":"0b5f7c1e-44aa-4c1e-9f0a-5d1b1f0e7a11","n":6,"item":"spot:Eb major:5:triad:guitar+2:5-4:2-8","seed":1005,"at":1795542870000,"offset":60,"right":true,"takenFor":null,"ms":3700,"sounded":0,"taps":1,"hidden":false,"grade":3}}',
      '{"review":{"device":"0b5f7c1e-44aa-4c1e-9f0a-5d1b1f0e7a11","n":7,"item":"place:Eb major:1:seventh:guitar+2:4-3-2:2-6","seed":1006,"at":1795629360000,"offset":60,"right":false,"takenFor":"5","ms":3800,"sounded":0,"taps":1,"hidden":false,"grade":1}}',
      '{"review":{"device":"0b5f7c1e-44aa-4c1e-9f0a-5d1b1f0e7a11","n":8,"item":"place:Eb major:1:seventh:guitar+2:4-3-2:3-7","seed":1007,"at":1795629450000,"offset":60,"right":true,"takenFor":null,"ms":3900,"sounded":0,"taps":1,"hidden":false,"grade":3}}',
      '{"review":{"device":"0b5f7c1e-44aa-4c1e-9f0a-5d1b1f0e7a11","n":9,"item":"place:Eb major:2:seventh:guitar+2:4-3-2:2-6","seed":1008,"at":1795629540000,"offset":60,"right":true,"takenFor":null,"ms":4000,"sounded":0,"taps":1,"hidden":false,"grade":3}}',
      '{"review":{"device":"0b5f7c1e-44aa-4c1e-9f0a-5d1b1f0e7a11","n":10,"item":"spot:Eb major:1:triad:guitar+2:5-4:1-7","seed":1009,"at":1795629630000,"offset":60,"right":true,"takenFor":null,"ms":4100,"sounded":0,"taps":1,"hidden":false,"grade":3}}',
      '{"review":{"device":"0b5f7c1e-44aa-4c1e-9f0a-5d1b1f0e7a11","n":11,"item":"spot:Eb major:1:triad:guitar+2:5-4:2-8","seed":1010,"at":1795629720000,"offset":60,"right":false,"takenFor":"5","ms":4200,"sounded":0,"taps":1,"hidden":false,"grade":1}}',
      '{"review":{"device":"0b5f7c1e-44aa-4c1e-9f0a-5d1b1f0e7a11","n":12,"item":"spot:Eb major:4:triad:guitar+2:5-4:1-7","seed":1011,"at":1795629810000,"offset":60,"right":true,"takenFor":null,"ms":4300,"sounded":0,"taps":1,"hidden":false,"grade":3}}',
      '{"aside":{"device":"0b5f7c1e-44aa-4c1e-9f0a-5d1b1f0e7a11","text":"[7,13,\\"spot:Eb major:1:triad:guitar+2:5-4:1-8\\"]","flaw":"newer"}}',
      '',
    ].join('\n'),
  },
  {
    version: 2,
    text: [
      '{"skipwise":"backup","version":2,"written":"2026-11-25T18:05:00.000Z","decks":1,"drafts":1,"reports":1,"reviews":12,"aside":1}',
      '{"deck":{"id":"d94b0907f407ca16","document":{"version":1,"title":"Tuesday, quay side","note":"Slowly.\\nThen once more.","lessonDay":"2026-12-08","instrument":{"name":"guitar","capo":2},"key":"Eb major","drills":[{"kind":"spot","degrees":[1,4,5],"sizes":["triad"],"strings":["5-4"],"frets":[1,8]},{"kind":"place","sizes":["seventh"],"strings":["4-3-2"],"frets":[2,7]},{"kind":"trace","degrees":[2,5],"sizes":["triad"],"contours":["up","skip"],"tempo":80}],"phrases":[{"tempo":72,"notes":["C4 for 1/3","Eb4","G4","F4","Eb4","A3"]}]},"added":1795429900000,"away":false}}',
      '{"draft":{"id":"b1f9","document":{"lesson":{"version":1,"title":"Tuesday, quay side","note":"Slowly.\\nThen once more.","lessonDay":"2026-12-08","instrument":{"name":"guitar","capo":2},"key":"Eb major","drills":[],"phrases":[{"tempo":72,"notes":["C4 for 1/3","Eb4","G4","F4","Eb4","A3"]}]},"form":{"degrees":[1,4,5],"sizes":["triad"],"strings":[[5,4]],"frets":[1,8],"drills":["spot",{"kind":"place","degrees":[1,2,3,4,5,6,7],"sizes":["seventh"],"strings":[[4,3,2]],"frets":[2,7]},{"kind":"trace","degrees":[2,5],"sizes":["triad"],"contours":["up","skip"],"tempo":80}],"marks":{}},"entry":null},"changed":1795619900000,"away":false,"shared":[{"deck":"d94b0907f407ca16","at":1795620900000}]}}',
      '{"report":{"sender":123456789,"deck":3714671755,"day":20782,"minute":1145,"link":"#/report/AgBoV2h5IGlzIGlpIG5vdCBJVj8fTWFyZWlrZQDdaWSLB1vNFVEujyAAAKoAPQAXwxHB____-AwPw2mo-AF6zAIs6GNaYaB2Zqd2CBOLaco8gQMGcmA6Sn7AHGabbHZQpGgNcJ35awg"}}',
      '{"review":{"device":"0b5f7c1e-44aa-4c1e-9f0a-5d1b1f0e7a11","n":1,"item":"spot:Eb major:1:triad:guitar+2:5-4:1-7","seed":1000,"at":1795542420000,"offset":60,"right":true,"takenFor":null,"ms":3200,"sounded":0,"taps":1,"hidden":false,"grade":3}}',
      '{"review":{"device":"0b5f7c1e-44aa-4c1e-9f0a-5d1b1f0e7a11","n":2,"item":"spot:Eb major:1:triad:guitar+2:5-4:2-8","seed":1001,"at":1795542510000,"offset":60,"right":true,"takenFor":null,"ms":3300,"sounded":0,"taps":1,"hidden":false,"grade":3}}',
      '{"review":{"device":"0b5f7c1e-44aa-4c1e-9f0a-5d1b1f0e7a11","n":3,"item":"spot:Eb major:4:triad:guitar+2:5-4:1-7","seed":1002,"at":1795542600000,"offset":60,"right":false,"takenFor":"5","ms":3400,"sounded":0,"taps":1,"hidden":false,"grade":1}}',
      '{"review":{"device":"0b5f7c1e-44aa-4c1e-9f0a-5d1b1f0e7a11","n":4,"item":"spot:Eb major:4:triad:guitar+2:5-4:2-8","seed":1003,"at":1795542690000,"offset":60,"right":true,"takenFor":null,"ms":3500,"sounded":0,"taps":1,"hidden":false,"grade":3}}',
      '{"review":{"device":"0b5f7c1e-44aa-4c1e-9f0a-5d1b1f0e7a11","n":5,"item":"spot:Eb major:5:triad:guitar+2:5-4:1-7","seed":1004,"at":1795542780000,"offset":60,"right":true,"takenFor":null,"ms":3600,"sounded":0,"taps":1,"hidden":false,"grade":3}}',
      '{"review":{"device":"0b5f7c1e-44aa-4c1e-9f0a-5d1b1f0e7a11","n":6,"item":"spot:Eb major:5:triad:guitar+2:5-4:2-8","seed":1005,"at":1795542870000,"offset":60,"right":true,"takenFor":null,"ms":3700,"sounded":0,"taps":1,"hidden":false,"grade":3}}',
      '{"review":{"device":"0b5f7c1e-44aa-4c1e-9f0a-5d1b1f0e7a11","n":7,"item":"place:Eb major:1:seventh:guitar+2:4-3-2:2-6","seed":1006,"at":1795629360000,"offset":60,"right":false,"takenFor":"5","ms":3800,"sounded":0,"taps":1,"hidden":false,"grade":1}}',
      '{"review":{"device":"0b5f7c1e-44aa-4c1e-9f0a-5d1b1f0e7a11","n":8,"item":"place:Eb major:1:seventh:guitar+2:4-3-2:3-7","seed":1007,"at":1795629450000,"offset":60,"right":true,"takenFor":null,"ms":3900,"sounded":0,"taps":1,"hidden":false,"grade":3}}',
      '{"review":{"device":"0b5f7c1e-44aa-4c1e-9f0a-5d1b1f0e7a11","n":9,"item":"place:Eb major:2:seventh:guitar+2:4-3-2:2-6","seed":1008,"at":1795629540000,"offset":60,"right":true,"takenFor":null,"ms":4000,"sounded":0,"taps":1,"hidden":false,"grade":3}}',
      '{"review":{"device":"0b5f7c1e-44aa-4c1e-9f0a-5d1b1f0e7a11","n":10,"item":"spot:Eb major:1:triad:guitar+2:5-4:1-7","seed":1009,"at":1795629630000,"offset":60,"right":true,"takenFor":null,"ms":4100,"sounded":0,"taps":1,"hidden":false,"grade":3}}',
      '{"review":{"device":"0b5f7c1e-44aa-4c1e-9f0a-5d1b1f0e7a11","n":11,"item":"spot:Eb major:1:triad:guitar+2:5-4:2-8","seed":1010,"at":1795629720000,"offset":60,"right":false,"takenFor":"5","ms":4200,"sounded":0,"taps":1,"hidden":false,"grade":1}}',
      '{"review":{"device":"0b5f7c1e-44aa-4c1e-9f0a-5d1b1f0e7a11","n":12,"item":"spot:Eb major:4:triad:guitar+2:5-4:1-7","seed":1011,"at":1795629810000,"offset":60,"right":true,"takenFor":null,"ms":4300,"sounded":0,"taps":1,"hidden":false,"grade":3}}',
      '{"aside":{"device":"0b5f7c1e-44aa-4c1e-9f0a-5d1b1f0e7a11","text":"[7,13,\\"spot:Eb major:1:triad:guitar+2:5-4:1-8\\"]","flaw":"newer"}}',
      '',
    ].join('\n'),
  },
  {
    version: 2,
    text: [
      '{"skipwise":"backup","version":2,"written":"2026-11-25T18:05:00.000Z","decks":1,"drafts":1,"reports":1,"reviews":12,"aside":1}',
      '{"deck":{"id":"d94b0907f407ca16","document":{"version":1,"title":"Tuesday, quay side","note":"Slowly.\\nThen once more.","lessonDay":"2026-12-08","instrument":{"name":"guitar","capo":2},"key":"Eb major","drills":[{"kind":"spot","degrees":[1,4,5],"sizes":["triad"],"strings":["5-4"],"frets":[1,8]},{"kind":"place","sizes":["seventh"],"strings":["4-3-2"],"frets":[2,7]},{"kind":"trace","degrees":[2,5],"sizes":["triad"],"contours":["up","skip"],"tempo":80}],"phrases":[{"tempo":72,"notes":["C4 for 1/3","Eb4","G4","F4","Eb4","A3"]}]},"added":1795429900000,"away":false}}',
      '{"draft":{"id":"b1f9","document":{"lesson":{"version":1,"title":"Down the stairs, backwards","instrument":"guitar","key":"Bb major","drills":[],"phrases":[{"tempo":72,"notes":["C4 for 1/3 on 3/5","Eb4 on 2/4","G4 on 1/3","F4 on 1/1","Eb4 on 2/4 by slide","A3 on 3/2"],"outline":["1-3 ii","4-6 V7"]}]},"form":{"sizes":["seventh"],"strings":["3-2"],"frets":[1,7],"drills":["outline","order","fill",{"kind":"trace","sizes":["seventh"],"contours":["turn"],"tempo":66,"rhythm":"eighths"},{"kind":"spot","sizes":["triad"],"strings":["3-2"],"frets":[1,7]}],"marks":{"spot:Bb major:7:triad:guitar:3-2:1-7":5,"spot:Bb major:1:triad:guitar:3-2:1-7":1}},"entry":null},"changed":1795619900000,"away":false,"shared":[{"deck":"d94b0907f407ca16","at":1795620900000}]}}',
      '{"report":{"sender":123456789,"deck":3714671755,"day":20782,"minute":1145,"link":"#/report/AwBoV2h5IGlzIGlpIG5vdCBJVj8fTWFyZWlrZQDdaWSLB1vNFVEujyAAAKoAPQALAAPuxjwAADAQAYBAYpDaJ81FyIepAe1Q5iHiQ9ieNQBykPIn7UMYhskB-VD2IYpDaJ81AC72Kcg"}}',
      '{"review":{"device":"0b5f7c1e-44aa-4c1e-9f0a-5d1b1f0e7a11","n":1,"item":"spot:Eb major:1:triad:guitar+2:5-4:1-7","seed":1000,"at":1795542420000,"offset":60,"right":true,"takenFor":null,"ms":3200,"sounded":0,"taps":1,"hidden":false,"grade":3}}',
      '{"review":{"device":"0b5f7c1e-44aa-4c1e-9f0a-5d1b1f0e7a11","n":2,"item":"spot:Eb major:1:triad:guitar+2:5-4:2-8","seed":1001,"at":1795542510000,"offset":60,"right":true,"takenFor":null,"ms":3300,"sounded":0,"taps":1,"hidden":false,"grade":3}}',
      '{"review":{"device":"0b5f7c1e-44aa-4c1e-9f0a-5d1b1f0e7a11","n":3,"item":"spot:Eb major:4:triad:guitar+2:5-4:1-7","seed":1002,"at":1795542600000,"offset":60,"right":false,"takenFor":"5","ms":3400,"sounded":0,"taps":1,"hidden":false,"grade":1}}',
      '{"review":{"device":"0b5f7c1e-44aa-4c1e-9f0a-5d1b1f0e7a11","n":4,"item":"spot:Eb major:4:triad:guitar+2:5-4:2-8","seed":1003,"at":1795542690000,"offset":60,"right":true,"takenFor":null,"ms":3500,"sounded":0,"taps":1,"hidden":false,"grade":3}}',
      '{"review":{"device":"0b5f7c1e-44aa-4c1e-9f0a-5d1b1f0e7a11","n":5,"item":"spot:Eb major:5:triad:guitar+2:5-4:1-7","seed":1004,"at":1795542780000,"offset":60,"right":true,"takenFor":null,"ms":3600,"sounded":0,"taps":1,"hidden":false,"grade":3}}',
      '{"review":{"device":"0b5f7c1e-44aa-4c1e-9f0a-5d1b1f0e7a11","n":6,"item":"spot:Eb major:5:triad:guitar+2:5-4:2-8","seed":1005,"at":1795542870000,"offset":60,"right":true,"takenFor":null,"ms":3700,"sounded":0,"taps":1,"hidden":false,"grade":3}}',
      '{"review":{"device":"0b5f7c1e-44aa-4c1e-9f0a-5d1b1f0e7a11","n":7,"item":"place:Eb major:1:seventh:guitar+2:4-3-2:2-6","seed":1006,"at":1795629360000,"offset":60,"right":false,"takenFor":"5","ms":3800,"sounded":0,"taps":1,"hidden":false,"grade":1}}',
      '{"review":{"device":"0b5f7c1e-44aa-4c1e-9f0a-5d1b1f0e7a11","n":8,"item":"place:Eb major:1:seventh:guitar+2:4-3-2:3-7","seed":1007,"at":1795629450000,"offset":60,"right":true,"takenFor":null,"ms":3900,"sounded":0,"taps":1,"hidden":false,"grade":3}}',
      '{"review":{"device":"0b5f7c1e-44aa-4c1e-9f0a-5d1b1f0e7a11","n":9,"item":"place:Eb major:2:seventh:guitar+2:4-3-2:2-6","seed":1008,"at":1795629540000,"offset":60,"right":true,"takenFor":null,"ms":4000,"sounded":0,"taps":1,"hidden":false,"grade":3}}',
      '{"review":{"device":"0b5f7c1e-44aa-4c1e-9f0a-5d1b1f0e7a11","n":10,"item":"spot:Eb major:1:triad:guitar+2:5-4:1-7","seed":1009,"at":1795629630000,"offset":60,"right":true,"takenFor":null,"ms":4100,"sounded":0,"taps":1,"hidden":false,"grade":3}}',
      '{"review":{"device":"0b5f7c1e-44aa-4c1e-9f0a-5d1b1f0e7a11","n":11,"item":"spot:Eb major:1:triad:guitar+2:5-4:2-8","seed":1010,"at":1795629720000,"offset":60,"right":false,"takenFor":"5","ms":4200,"sounded":0,"taps":1,"hidden":false,"grade":1}}',
      '{"review":{"device":"0b5f7c1e-44aa-4c1e-9f0a-5d1b1f0e7a11","n":12,"item":"spot:Eb major:4:triad:guitar+2:5-4:1-7","seed":1011,"at":1795629810000,"offset":60,"right":true,"takenFor":null,"ms":4300,"sounded":0,"taps":1,"hidden":false,"grade":3}}',
      '{"aside":{"device":"0b5f7c1e-44aa-4c1e-9f0a-5d1b1f0e7a11","text":"[7,13,\\"spot:Eb major:1:triad:guitar+2:5-4:1-8\\"]","flaw":"newer"}}',
      '',
    ].join('\n'),
  },
  {
    version: 3,
    text: [
      '{"skipwise":"backup","version":3,"written":"2026-11-25T18:05:00.000Z","decks":1,"drafts":1,"reports":1,"minutes":1,"reviews":12,"aside":1}',
      '{"deck":{"id":"d94b0907f407ca16","document":{"version":1,"title":"Tuesday, quay side","note":"Slowly.\\nThen once more.","lessonDay":"2026-12-08","instrument":{"name":"guitar","capo":2},"key":"Eb major","drills":[{"kind":"spot","degrees":[1,4,5],"sizes":["triad"],"strings":["5-4"],"frets":[1,8]},{"kind":"place","sizes":["seventh"],"strings":["4-3-2"],"frets":[2,7]},{"kind":"trace","degrees":[2,5],"sizes":["triad"],"contours":["up","skip"],"tempo":80}],"phrases":[{"tempo":72,"notes":["C4 for 1/3","Eb4","G4","F4","Eb4","A3"]}]},"added":1795429900000,"away":false}}',
      '{"draft":{"id":"b1f9","document":{"lesson":{"version":1,"title":"Slack water","instrument":"guitar","key":"G harmonic minor","drills":[]},"form":{"degrees":[1,5],"sizes":["triad"],"strings":["5-4"],"frets":[1,8],"drills":[{"kind":"play","degrees":[1,5],"sizes":["triad"],"strings":["5-4"],"frets":[1,8],"ways":["up","down"],"tempo":60},{"kind":"echo","degrees":[1],"sizes":["triad"],"contours":["up"],"tempo":72},{"kind":"pulse","figures":["triplets"],"tempos":[60,72],"clicks":["bar"]},{"kind":"place","degrees":[1,7],"sizes":["triad"],"strings":["5-4"],"frets":[1,8]}],"marks":{}},"entry":null},"changed":1795619900000,"away":false,"shared":[{"deck":"d94b0907f407ca16","at":1795620900000}]}}',
      '{"report":{"sender":123456789,"deck":3714671755,"day":20782,"minute":1145,"link":"#/report/AwBoV2h5IGlzIGlpIG5vdCBJVj8fTWFyZWlrZQDdaWSLB1vNFVEujyAAAKoAPQALAAPuxjwAADAQAYBAYpDaJ81FyIepAe1Q5iHiQ9ieNQBykPIn7UMYhskB-VD2IYpDaJ81AC72Kcg"}}',
      '{"minute":{"lesson":"d94b0907f407ca16","at":1795624900000,"document":{"figures":{"tempo":72,"notes":60,"leftOut":3,"leaping":0.42,"run":5,"outlined":4,"reach":180,"spread":0.03,"pauses":2},"line":null}}}',
      '{"review":{"device":"0b5f7c1e-44aa-4c1e-9f0a-5d1b1f0e7a11","n":1,"item":"spot:Eb major:1:triad:guitar+2:5-4:1-7","seed":1000,"at":1795542420000,"offset":60,"right":true,"takenFor":null,"ms":3200,"sounded":0,"taps":1,"hidden":false,"grade":3}}',
      '{"review":{"device":"0b5f7c1e-44aa-4c1e-9f0a-5d1b1f0e7a11","n":2,"item":"spot:Eb major:1:triad:guitar+2:5-4:2-8","seed":1001,"at":1795542510000,"offset":60,"right":true,"takenFor":null,"ms":3300,"sounded":0,"taps":1,"hidden":false,"grade":3}}',
      '{"review":{"device":"0b5f7c1e-44aa-4c1e-9f0a-5d1b1f0e7a11","n":3,"item":"spot:Eb major:4:triad:guitar+2:5-4:1-7","seed":1002,"at":1795542600000,"offset":60,"right":false,"takenFor":"5","ms":3400,"sounded":0,"taps":1,"hidden":false,"grade":1}}',
      '{"review":{"device":"0b5f7c1e-44aa-4c1e-9f0a-5d1b1f0e7a11","n":4,"item":"spot:Eb major:4:triad:guitar+2:5-4:2-8","seed":1003,"at":1795542690000,"offset":60,"right":true,"takenFor":null,"ms":3500,"sounded":0,"taps":1,"hidden":false,"grade":3}}',
      '{"review":{"device":"0b5f7c1e-44aa-4c1e-9f0a-5d1b1f0e7a11","n":5,"item":"spot:Eb major:5:triad:guitar+2:5-4:1-7","seed":1004,"at":1795542780000,"offset":60,"right":true,"takenFor":null,"ms":3600,"sounded":0,"taps":1,"hidden":false,"grade":3}}',
      '{"review":{"device":"0b5f7c1e-44aa-4c1e-9f0a-5d1b1f0e7a11","n":6,"item":"spot:Eb major:5:triad:guitar+2:5-4:2-8","seed":1005,"at":1795542870000,"offset":60,"right":true,"takenFor":null,"ms":3700,"sounded":0,"taps":1,"hidden":false,"grade":3}}',
      '{"review":{"device":"0b5f7c1e-44aa-4c1e-9f0a-5d1b1f0e7a11","n":7,"item":"place:Eb major:1:seventh:guitar+2:4-3-2:2-6","seed":1006,"at":1795629360000,"offset":60,"right":false,"takenFor":"5","ms":3800,"sounded":0,"taps":1,"hidden":false,"grade":1}}',
      '{"review":{"device":"0b5f7c1e-44aa-4c1e-9f0a-5d1b1f0e7a11","n":8,"item":"place:Eb major:1:seventh:guitar+2:4-3-2:3-7","seed":1007,"at":1795629450000,"offset":60,"right":true,"takenFor":null,"ms":3900,"sounded":0,"taps":1,"hidden":false,"grade":3}}',
      '{"review":{"device":"0b5f7c1e-44aa-4c1e-9f0a-5d1b1f0e7a11","n":9,"item":"place:Eb major:2:seventh:guitar+2:4-3-2:2-6","seed":1008,"at":1795629540000,"offset":60,"right":true,"takenFor":null,"ms":4000,"sounded":0,"taps":1,"hidden":false,"grade":3}}',
      '{"review":{"device":"0b5f7c1e-44aa-4c1e-9f0a-5d1b1f0e7a11","n":10,"item":"spot:Eb major:1:triad:guitar+2:5-4:1-7","seed":1009,"at":1795629630000,"offset":60,"right":true,"takenFor":null,"ms":4100,"sounded":0,"taps":1,"hidden":false,"grade":3}}',
      '{"review":{"device":"0b5f7c1e-44aa-4c1e-9f0a-5d1b1f0e7a11","n":11,"item":"spot:Eb major:1:triad:guitar+2:5-4:2-8","seed":1010,"at":1795629720000,"offset":60,"right":false,"takenFor":"5","ms":4200,"sounded":0,"taps":1,"hidden":false,"grade":1}}',
      '{"review":{"device":"0b5f7c1e-44aa-4c1e-9f0a-5d1b1f0e7a11","n":12,"item":"spot:Eb major:4:triad:guitar+2:5-4:1-7","seed":1011,"at":1795629810000,"offset":60,"right":true,"takenFor":null,"ms":4300,"sounded":0,"taps":1,"hidden":false,"grade":3}}',
      '{"aside":{"device":"0b5f7c1e-44aa-4c1e-9f0a-5d1b1f0e7a11","text":"[7,13,\\"spot:Eb major:1:triad:guitar+2:5-4:1-8\\"]","flaw":"newer"}}',
      '',
    ].join('\n'),
  },
  {
    version: 4,
    text: [
      '{"skipwise":"backup","version":4,"written":"2026-11-25T18:05:00.000Z","decks":1,"drafts":1,"reports":1,"minutes":1,"timings":1,"reviews":12,"aside":1}',
      '{"deck":{"id":"d94b0907f407ca16","document":{"version":1,"title":"Tuesday, quay side","note":"Slowly.\\nThen once more.","lessonDay":"2026-12-08","instrument":{"name":"guitar","capo":2},"key":"Eb major","drills":[{"kind":"spot","degrees":[1,4,5],"sizes":["triad"],"strings":["5-4"],"frets":[1,8]},{"kind":"place","sizes":["seventh"],"strings":["4-3-2"],"frets":[2,7]},{"kind":"trace","degrees":[2,5],"sizes":["triad"],"contours":["up","skip"],"tempo":80}],"phrases":[{"tempo":72,"notes":["C4 for 1/3","Eb4","G4","F4","Eb4","A3"]}]},"added":1795429900000,"away":false}}',
      '{"draft":{"id":"b1f9","document":{"lesson":{"version":1,"title":"Root below","instrument":"guitar","key":"Bb major","drills":[]},"form":{"sizes":["triad"],"strings":["5-4"],"frets":[1,8],"drills":[{"kind":"spot","sizes":["triad"],"strings":["5-4"],"frets":[1,8],"shapes":"root position"},{"kind":"place","degrees":[1,4],"sizes":["triad"],"strings":["4-3-2"],"frets":[1,8],"shapes":"inversions"}],"marks":{}},"entry":null,"taken":null},"changed":1795619900000,"away":false,"shared":[{"deck":"d94b0907f407ca16","at":1795620900000}]}}',
      '{"report":{"sender":123456789,"deck":3714671755,"day":20782,"minute":1145,"link":"#/report/BABvV2h5IGlzIGlpIG5vdCBJVj8fTWFyZWlrZQDdaWSLB1vNFVEujyAAAKoAPQALAAPuxjwACiszqEYZpHgMBABgEBikNonzUXIh6kB7VDmIeJD2J41AHKQ8iftQxiGyQH5UPYhikNonzUAajLG-"}}',
      '{"minute":{"lesson":"d94b0907f407ca16","at":1795624900000,"document":{"figures":{"tempo":72,"notes":60,"leftOut":3,"leaping":0.42,"run":5,"outlined":4,"reach":180,"spread":0.03,"pauses":2},"line":null}}}',
      '{"timing":{"figure":"pulse:G harmonic minor:triplets","timing":{"spread":0.05,"drift":null,"limps":null}}}',
      '{"review":{"device":"0b5f7c1e-44aa-4c1e-9f0a-5d1b1f0e7a11","n":1,"item":"spot:Eb major:1:triad:guitar+2:5-4:1-7","seed":1000,"at":1795542420000,"offset":60,"right":true,"takenFor":null,"ms":3200,"sounded":0,"taps":1,"hidden":false,"grade":3}}',
      '{"review":{"device":"0b5f7c1e-44aa-4c1e-9f0a-5d1b1f0e7a11","n":2,"item":"spot:Eb major:1:triad:guitar+2:5-4:2-8","seed":1001,"at":1795542510000,"offset":60,"right":true,"takenFor":null,"ms":3300,"sounded":0,"taps":1,"hidden":false,"grade":3}}',
      '{"review":{"device":"0b5f7c1e-44aa-4c1e-9f0a-5d1b1f0e7a11","n":3,"item":"spot:Eb major:4:triad:guitar+2:5-4:1-7","seed":1002,"at":1795542600000,"offset":60,"right":false,"takenFor":"5","ms":3400,"sounded":0,"taps":1,"hidden":false,"grade":1}}',
      '{"review":{"device":"0b5f7c1e-44aa-4c1e-9f0a-5d1b1f0e7a11","n":4,"item":"spot:Eb major:4:triad:guitar+2:5-4:2-8","seed":1003,"at":1795542690000,"offset":60,"right":true,"takenFor":null,"ms":3500,"sounded":0,"taps":1,"hidden":false,"grade":3}}',
      '{"review":{"device":"0b5f7c1e-44aa-4c1e-9f0a-5d1b1f0e7a11","n":5,"item":"spot:Eb major:5:triad:guitar+2:5-4:1-7","seed":1004,"at":1795542780000,"offset":60,"right":true,"takenFor":null,"ms":3600,"sounded":0,"taps":1,"hidden":false,"grade":3}}',
      '{"review":{"device":"0b5f7c1e-44aa-4c1e-9f0a-5d1b1f0e7a11","n":6,"item":"spot:Eb major:5:triad:guitar+2:5-4:2-8","seed":1005,"at":1795542870000,"offset":60,"right":true,"takenFor":null,"ms":3700,"sounded":0,"taps":1,"hidden":false,"grade":3}}',
      '{"review":{"device":"0b5f7c1e-44aa-4c1e-9f0a-5d1b1f0e7a11","n":7,"item":"place:Eb major:1:seventh:guitar+2:4-3-2:2-6","seed":1006,"at":1795629360000,"offset":60,"right":false,"takenFor":"5","ms":3800,"sounded":0,"taps":1,"hidden":false,"grade":1}}',
      '{"review":{"device":"0b5f7c1e-44aa-4c1e-9f0a-5d1b1f0e7a11","n":8,"item":"place:Eb major:1:seventh:guitar+2:4-3-2:3-7","seed":1007,"at":1795629450000,"offset":60,"right":true,"takenFor":null,"ms":3900,"sounded":0,"taps":1,"hidden":false,"grade":3}}',
      '{"review":{"device":"0b5f7c1e-44aa-4c1e-9f0a-5d1b1f0e7a11","n":9,"item":"place:Eb major:2:seventh:guitar+2:4-3-2:2-6","seed":1008,"at":1795629540000,"offset":60,"right":true,"takenFor":null,"ms":4000,"sounded":0,"taps":1,"hidden":false,"grade":3}}',
      '{"review":{"device":"0b5f7c1e-44aa-4c1e-9f0a-5d1b1f0e7a11","n":10,"item":"spot:Eb major:1:triad:guitar+2:5-4:1-7","seed":1009,"at":1795629630000,"offset":60,"right":true,"takenFor":null,"ms":4100,"sounded":0,"taps":1,"hidden":false,"grade":3}}',
      '{"review":{"device":"0b5f7c1e-44aa-4c1e-9f0a-5d1b1f0e7a11","n":11,"item":"spot:Eb major:1:triad:guitar+2:5-4:2-8","seed":1010,"at":1795629720000,"offset":60,"right":false,"takenFor":"5","ms":4200,"sounded":0,"taps":1,"hidden":false,"grade":1}}',
      '{"review":{"device":"0b5f7c1e-44aa-4c1e-9f0a-5d1b1f0e7a11","n":12,"item":"spot:Eb major:4:triad:guitar+2:5-4:1-7","seed":1011,"at":1795629810000,"offset":60,"right":true,"takenFor":null,"ms":4300,"sounded":0,"taps":1,"hidden":false,"grade":3}}',
      '{"aside":{"device":"0b5f7c1e-44aa-4c1e-9f0a-5d1b1f0e7a11","text":"[7,13,\\"spot:Eb major:1:triad:guitar+2:5-4:1-8\\"]","flaw":"newer"}}',
      '',
    ].join('\n'),
  },
];
