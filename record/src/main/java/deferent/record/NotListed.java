package deferent.record;

/**
 * A file in the shelf's folder that is not on the shelf.
 *
 * @param file its name, control characters left out
 * @param why a clause that says what keeps it off
 */
public record NotListed(String file, String why) {
    public NotListed {
        file = file.replaceAll("\\p{Cntrl}", "\uFFFD");
    }
}
