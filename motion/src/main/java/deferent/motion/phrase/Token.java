package deferent.motion.phrase;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** A piece of a phrase: a run of letters, a number, or a mark. */
record Token(Kind kind, String text, Spot spot) {
    enum Kind {
        LETTERS,
        NUMBER,
        COMMA,
        COLON,
        SLASH,
        /** A sign that joins: &, + or ×. */
        MARK,
        /** A sign no phrase uses. */
        OTHER
    }

    /**
     * Cuts a line into tokens. Spaces, hyphens, full stops and other ends of sentences, brackets
     * and equals signs only part words; a hyphen that stands before a figure and after none is a
     * minus. The degree sign is a word of its own.
     */
    static List<Token> of(String line) {
        List<Token> found = new ArrayList<>();
        int i = 0;
        while (i < line.length()) {
            char c = line.charAt(i);
            int end = i + 1;
            if (Character.isLetter(c)) {
                while (end < line.length() && Character.isLetter(line.charAt(end))) {
                    end++;
                }
                found.add(token(Kind.LETTERS, line, i, end));
            } else if (c == '°' || c == '\'' || c == '’') {
                if (c == '°') {
                    found.add(token(Kind.LETTERS, line, i, end));
                }
            } else if (startsNumber(line, i)) {
                end = numberEnd(line, i);
                found.add(token(Kind.NUMBER, line, i, end));
            } else if (c == '"' && figure(line, i - 1)) {
                found.add(token(Kind.LETTERS, line, i, end)); // inches
            } else if (c == ',' || c == ';') {
                found.add(token(Kind.COMMA, line, i, end));
            } else if (c == ':') {
                found.add(token(Kind.COLON, line, i, end));
            } else if ("&+×|".indexOf(c) >= 0) {
                found.add(token(Kind.MARK, line, i, end));
            } else if (c == '/') {
                found.add(token(Kind.SLASH, line, i, end));
            } else if (!Character.isWhitespace(c) && "-‐‑–−.!?=()\"“”".indexOf(c) < 0) {
                found.add(token(Kind.OTHER, line, i, end));
            }
            i = end;
        }
        return found;
    }

    private static Token token(Kind kind, String line, int start, int end) {
        return new Token(kind, line.substring(start, end), new Spot(start, end));
    }

    private static boolean figure(String line, int at) {
        return at >= 0 && at < line.length() && line.charAt(at) >= '0' && line.charAt(at) <= '9';
    }

    private static boolean startsNumber(String line, int at) {
        if (figure(line, at)) {
            return true;
        }
        if (line.charAt(at) == '.') {
            return figure(line, at + 1) && (at == 0 || !Character.isLetter(line.charAt(at - 1)));
        }
        boolean sign = "-−+".indexOf(line.charAt(at)) >= 0;
        boolean free = at == 0 || !Character.isLetterOrDigit(line.charAt(at - 1));
        return sign
                && free
                && (figure(line, at + 1)
                        || (at + 1 < line.length()
                                && line.charAt(at + 1) == '.'
                                && figure(line, at + 2)));
    }

    private static int numberEnd(String line, int at) {
        int end = at + 1;
        while (figure(line, end)) {
            end++;
        }
        if (end < line.length()
                && line.charAt(end) == '.'
                && figure(line, end + 1)
                && line.charAt(at) != '.') {
            end++;
            while (figure(line, end)) {
                end++;
            }
        }
        if (end < line.length() && (line.charAt(end) == 'e' || line.charAt(end) == 'E')) {
            int power = end + 1;
            if (power < line.length() && "-+".indexOf(line.charAt(power)) >= 0) {
                power++;
            }
            if (figure(line, power)) {
                end = power;
                while (figure(line, end)) {
                    end++;
                }
            }
        }
        return end;
    }

    /** The number of a NUMBER token. */
    double number() {
        return Double.parseDouble(text.replace('−', '-'));
    }

    /** Its decimal figures as they stand; empty where its power of ten is beyond any double. */
    Optional<BigDecimal> figures() {
        return text.matches(".*[eE][-+]?\\d{5,}")
                ? Optional.empty()
                : Optional.of(new BigDecimal(text.replace('−', '-')));
    }
}
