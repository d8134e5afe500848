package deferent.search.seek;

/** What speaks against trying an answer first. */
public enum Against {
    /** With hands and heads where they are meant to be a cord goes slack, at every tempo tried. */
    SLACK,
    /** A poi would have to change its pace in an instant. */
    JUMP,
    /** It is a danger as it stands. */
    DANGER,
    /** It takes many words to say. */
    WORDS,
    /** One of its kind is on the shelf. */
    KNOWN
}
