// What can be asked of the studio: the schema of its protocol as types. Written by ProtocolTypes; a test holds it to the schema.

declare namespace Protocol {
  /** What a question says besides what it asks. */
  type Said<Asked> = Asked extends unknown ? Omit<Asked, 'ask' | 'id'> : never;

  type Question = Pairing | Fit | Letgo | Transitions | Learn | Next | TransitionPlay | TransitionTake | Route | Photo | Words | Moves | Complete | Seek | Map | Set | SetPlay | SetTake | SetSuggest | Film | Filmed | Beats | Take | Stop;

  /** readings and scene of a pairing */
  type Pairing = {
    ask: 'pairing';
    id?: any | null;
    performer?: Performer | null;
    kit?: Kit | null;
    change?: Change[] | null;
    detail?: Detail | null;
    samples?: number | null;
    time_s?: number | null;
    body?: boolean | null;
    told?: boolean | null;
    carrier?: Carrier | null;
    show?: Show | null;
  } & (
    | { phrase: string; pattern?: never }
    | { phrase?: never; pattern: object }
  );

  /** what would close a link */
  type Fit = {
    ask: 'fit';
    id?: any | null;
    performer?: Performer | null;
    kit?: Kit | null;
    change?: Change[] | null;
    carrier?: Carrier | null;
    free?: string[] | null;
    arms?: boolean | null;
    owned_m?: number[] | null;
  } & (
    | { phrase: string; pattern?: never }
    | { phrase?: never; pattern: object }
  );

  /** a poi let go, or slipped */
  type Letgo = {
    ask: 'letgo';
    id?: any | null;
    performer?: Performer | null;
    kit?: Kit | null;
    change?: Change[] | null;
    side: Side;
    time_s?: number | null;
    slip_m?: number | null;
    seconds?: number | null;
    rate?: number | null;
    show?: Show | null;
  } & (
    | { phrase: string; pattern?: never }
    | { phrase?: never; pattern: object }
  );

  /** the short passages from one pattern to another, best first */
  type Transitions = {
    ask: 'transitions';
    id?: any | null;
    performer?: Performer | null;
    kit?: Kit | null;
    change?: Change[] | null;
    to: To;
    hardest?: Hardest | null;
  } & (
    | { phrase: string; pattern?: never }
    | { phrase?: never; pattern: object }
  );

  /** an order to learn a pattern in, and its days */
  type Learn = {
    ask: 'learn';
    id?: any | null;
    performer?: Performer | null;
    kit?: Kit | null;
    change?: Change[] | null;
    from?: string | null;
    by?: string | null;
    minutes?: number | null;
  } & (
    | { phrase: string; pattern?: never }
    | { phrase?: never; pattern: object }
  );

  /** what could come next, nothing else being said */
  type Next = {
    ask: 'next';
    id?: any | null;
    performer?: Performer | null;
    kit?: Kit | null;
    change?: Change[] | null;
    hardest?: Hardest | null;
    limit?: number | null;
  } & (
    | { phrase: string; pattern?: never }
    | { phrase?: never; pattern: object }
  );

  /** one transition, played */
  type TransitionPlay = {
    ask: 'transition-play';
    id?: any | null;
    performer?: Performer | null;
    kit?: Kit | null;
    change?: Change[] | null;
    to: To;
    hardest?: Hardest | null;
    transition?: number | null;
    rate?: number | null;
  } & (
    | { phrase: string; pattern?: never }
    | { phrase?: never; pattern: object }
  );

  /** one transition as a clip or a picture */
  type TransitionTake = {
    ask: 'transition-take';
    id?: any | null;
    performer?: Performer | null;
    kit?: Kit | null;
    change?: Change[] | null;
    to: To;
    hardest?: Hardest | null;
    transition?: number | null;
    as: string;
    wishes?: object | null;
  } & (
    | { phrase: string; pattern?: never }
    | { phrase?: never; pattern: object }
  );

  /** the gentlest way over the map from one pattern to another */
  type Route = {
    ask: 'route';
    id?: any | null;
    from: string;
    to: string;
    hardest?: Hardest | null;
  };

  /** how to photograph a pattern */
  type Photo = {
    ask: 'photo';
    id?: any | null;
    performer?: Performer | null;
    kit?: Kit | null;
    change?: Change[] | null;
    light_m?: number | null;
    led_hz?: number | null;
    duty?: number | null;
    shutter_s?: number | null;
  } & (
    | { phrase: string; pattern?: never }
    | { phrase?: never; pattern: object }
  );

  /** the words of phrases */
  type Words = {
    ask: 'words';
    id?: any | null;
    word?: string | null;
  };

  /** what small moving pictures of phrases move through */
  type Moves = {
    ask: 'moves';
    id?: any | null;
    phrases?: string[] | null;
    samples?: number | null;
  };

  /** what could be written at a place of a phrase */
  type Complete = {
    ask: 'complete';
    id?: any | null;
    text: string;
    at?: number | null;
  };

  /** pairings that link */
  type Seek = {
    ask: 'seek';
    id?: any | null;
    phrase?: string | null;
    pattern?: object | null;
    performer?: Performer | null;
    kit?: Kit | null;
    change?: Change[] | null;
    page?: number | null;
    motions?: number | null;
    order?: Order | null;
    filter?: Filter | null;
    tethers?: Tethers | null;
    tolerance_m?: number | null;
    limit?: number | null;
    per_family?: number | null;
  };

  /** the shelf as a map */
  type Map = {
    ask: 'map';
    id?: any | null;
    hardest?: Hardest | null;
  };

  /** how a set goes: patterns in order, each for so many counts, and what leads on */
  type Set = {
    ask: 'set';
    id?: any | null;
    name?: string | null;
    song?: Song | null;
    hardest?: Hardest | null;
    round?: boolean | null;
  } & (
    | { saved: string; steps?: never }
    | { saved?: never; steps: Steps[] }
  );

  /** a set, or a part of it, played */
  type SetPlay = {
    ask: 'set-play';
    id?: any | null;
    name?: string | null;
    song?: Song | null;
    hardest?: Hardest | null;
    round?: boolean | null;
    from_s?: number | null;
    to_s?: number | null;
    rate?: number | null;
  } & (
    | { saved: string; steps?: never }
    | { saved?: never; steps: Steps[] }
  );

  /** a set as a clip or a sheet */
  type SetTake = {
    ask: 'set-take';
    id?: any | null;
    name?: string | null;
    song?: Song | null;
    hardest?: Hardest | null;
    round?: boolean | null;
    as: string;
    wishes?: object | null;
  } & (
    | { saved: string; steps?: never }
    | { saved?: never; steps: Steps[] }
  );

  /** patterns of the shelf in an order that can be spun, hardest in the middle */
  type SetSuggest = {
    ask: 'set-suggest';
    id?: any | null;
    count?: number | null;
    begin?: string | null;
    hardest?: Hardest | null;
  };

  /** what a film of practice shows */
  type Film = {
    ask: 'film';
    id?: any | null;
    phrase?: string | null;
    pattern?: object | null;
    performer?: Performer | null;
    kit?: Kit | null;
    change?: Change[] | null;
    film: string;
    called?: string | null;
    tether_m?: number | null;
    pixel_m?: number | null;
    first?: First | null;
    mirrored?: boolean | null;
    from_s?: number | null;
    to_s?: number | null;
    pointed?: Pointed[] | null;
  };

  /** a file of a film of practice */
  type Filmed = {
    ask: 'filmed';
    id?: any | null;
    phrase?: string | null;
    pattern?: object | null;
    performer?: Performer | null;
    kit?: Kit | null;
    change?: Change[] | null;
    film: string;
    called?: string | null;
    tether_m?: number | null;
    pixel_m?: number | null;
    first?: First | null;
    mirrored?: boolean | null;
    from_s?: number | null;
    to_s?: number | null;
    pointed?: Pointed[] | null;
    as: string;
    wishes?: object | null;
  };

  /** the beats of a song, how quick they are, and its bars */
  type Beats = {
    ask: 'beats';
    id?: any | null;
    song: string;
    taps_s?: number[] | null;
    beats_a_bar?: number | null;
    mends?: Mends[] | null;
  };

  /** a file of a pattern, of some or of the shelf */
  type Take = {
    ask: 'take';
    id?: any | null;
    performer?: Performer | null;
    kit?: Kit | null;
    change?: Change[] | null;
    as: string;
    wishes?: object | null;
    title?: string | null;
    route?: boolean | null;
  } & (
    | { phrase: string; pattern?: never; patterns?: never; shelf?: never }
    | { phrase?: never; pattern: object; patterns?: never; shelf?: never }
    | { phrase?: never; pattern?: never; patterns: object[]; shelf?: never }
    | { phrase?: never; pattern?: never; patterns?: never; shelf: true }
  );

  /** the end of what is told in parts, a seek or a file under way for one, with what it has */
  type Stop = {
    ask: 'stop';
    id?: any | null;
    of?: Of | null;
  };

  type Carrier = 'left' | 'right';
  type Change = {
    set: string;
    to: number | null;
    typed_in?: TypedIn | null;
  } | {
    grab: string;
    to: [number, number, number];
    from?: [number, number, number] | null;
    time_s?: number | null;
  } | {
    do: Do;
  };
  type Detail = 'live' | 'settled';
  type Do = 'swap' | 'reverse' | 'step-timing' | 'step-direction';
  type Filter = {
    exact?: boolean | null;
    reachable?: boolean | null;
    slowest_cycles_per_min?: number | null;
    growth?: number | null;
    symmetry?: number | null;
    contrast?: number | null;
    near_m?: number | null;
    new?: boolean | null;
  };
  type First = 'left' | 'right';
  type Hardest = 'easy' | 'practised' | 'hard';
  type Heads = 'soft' | 'hard' | 'fire';
  type Kit = {
    head_mass_kg?: number | null;
    head_diameter_m?: number | null;
    cord_kg_per_m?: number | null;
    air?: boolean | null;
    heads?: Heads | null;
  };
  type Level = 'double' | 'half';
  type Mends = {
    level: Level;
  } | {
    first_bar: number;
  } | {
    beat: number;
    to_s: number;
  };
  type Of = 'seek' | 'map' | 'set-suggest' | 'set-take' | 'route' | 'next' | 'learn' | 'take' | 'transition-take' | 'film' | 'filmed' | 'beats';
  type Order = 'try' | 'closest' | 'reach' | 'slowest' | 'steadiness' | 'symmetry' | 'contrast' | 'near-shelf' | 'new';
  type Performer = {
    stature_m?: number | null;
    arm_m?: number | null;
    shoulder_width_m?: number | null;
    hand_speed_m_per_s?: number | null;
    hand_acceleration_m_per_s2?: number | null;
    hand_leave_m?: number | null;
  };
  type Pointed = {
    time_s: number;
    x: number;
    y: number;
  };
  type Show = 'ideal' | 'figure' | 'hand-path' | 'closest';
  type Side = 'left' | 'right';
  type Song = {
    id: string;
    name: string;
    from_beat?: number | null;
  };
  type Steps = {
    id: string;
    name: string;
    counts: number;
    turn?: Turn | null;
    beats_a_cycle?: number | null;
  } | {
    pattern: object;
    counts: number;
    turn?: Turn | null;
    beats_a_cycle?: number | null;
  } | {
    phrase: string;
    counts: number;
    turn?: Turn | null;
    beats_a_cycle?: number | null;
  };
  type Tethers = 'equal' | 'free';
  type To = {
    performer?: Performer | null;
    kit?: Kit | null;
    change?: Change[] | null;
  } & (
    | { phrase: string; pattern?: never }
    | { phrase?: never; pattern: object }
  );
  type Turn = {
    turn_deg: number;
    count: number;
  };
  type TypedIn = 'm' | 'cm';
}
