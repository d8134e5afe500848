package deferent.page.sheet;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.verapdf.core.EncryptedPdfException;
import org.verapdf.core.ModelParsingException;
import org.verapdf.core.ValidationException;
import org.verapdf.gf.foundry.VeraGreenfieldFoundryProvider;
import org.verapdf.pdfa.Foundries;
import org.verapdf.pdfa.PDFAParser;
import org.verapdf.pdfa.PDFAValidator;
import org.verapdf.pdfa.flavours.PDFAFlavour;
import org.verapdf.pdfa.results.TestAssertion;

/** What an independent checker finds wrong with a PDF by PDF/UA-1 (ISO 14289-1:2014). */
final class Accessible {
    private Accessible() {}

    static {
        VeraGreenfieldFoundryProvider.initialise();
    }

    /** Each rule that is broken with its clause, and what breaks it first; none is right. */
    static List<String> faults(byte[] pdf) {
        try (PDFAParser parser =
                        Foundries.defaultInstance()
                                .createParser(new ByteArrayInputStream(pdf), PDFAFlavour.PDFUA_1);
                PDFAValidator validator =
                        Foundries.defaultInstance().createValidator(PDFAFlavour.PDFUA_1, false)) {
            List<String> faults = new ArrayList<>();
            for (TestAssertion found : validator.validate(parser).getTestAssertions()) {
                if (found.getStatus() == TestAssertion.Status.FAILED) {
                    faults.add(
                            found.getRuleId().getClause()
                                    + "-"
                                    + found.getRuleId().getTestNumber()
                                    + ": "
                                    + found.getMessage()
                                    + " at "
                                    + found.getLocation().getContext());
                }
            }
            return faults;
        } catch (EncryptedPdfException | ModelParsingException | ValidationException e) {
            throw new IllegalStateException(e);
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }
}
