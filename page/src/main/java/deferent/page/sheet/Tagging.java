package deferent.page.sheet;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentCatalog;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDMetadata;
import org.apache.pdfbox.pdmodel.common.PDNumberTreeNode;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDMarkInfo;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDMarkedContentReference;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDObjectReference;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDParentTreeValue;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureElement;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureNode;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureTreeRoot;
import org.apache.pdfbox.pdmodel.documentinterchange.taggedpdf.PDListAttributeObject;
import org.apache.pdfbox.pdmodel.documentinterchange.taggedpdf.PDTableAttributeObject;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAnnotationLink;

/**
 * The structure of one document: its elements in the order in which they are read, and which marks
 * of which page each is made of (PDF 1.7, 14.7; ISO 14289-1:2014).
 */
final class Tagging {
    private final PDStructureTreeRoot root = new PDStructureTreeRoot();
    private final PDStructureElement whole = new PDStructureElement("Document", root);
    private final IdentityHashMap<Tag, PDStructureElement> elements = new IdentityHashMap<>();
    private final Map<Integer, PDParentTreeValue> parents = new LinkedHashMap<>();

    Tagging() {
        root.appendKid(whole);
    }

    /** One page on which marks are opened and closed as their tags change. */
    final class Sheaf {
        private final PDPage page;
        private final PDPageContentStream on;
        private final COSArray owners = new COSArray();
        private Optional<Tag> open = Optional.empty();
        private boolean begun;

        private Sheaf(PDPage page, PDPageContentStream on) {
            this.page = page;
            this.on = on;
            page.setStructParents(parents.size());
            page.getCOSObject().setItem(COSName.getPDFName("Tabs"), COSName.S);
            parents.put(parents.size(), new PDParentTreeValue(owners));
        }

        /** What is drawn from here on belongs to that tag, or is decoration. */
        void open(Optional<Tag> tag) throws IOException {
            if (begun && tag.equals(open)) {
                return;
            }
            close();
            if (tag.isEmpty()) {
                on.beginMarkedContent(COSName.ARTIFACT);
            } else {
                PDStructureElement element = element(tag.get());
                int mark = owners.size();
                owners.add(element);
                COSDictionary kid = new COSDictionary();
                kid.setItem(COSName.TYPE, COSName.getPDFName("MCR"));
                kid.setItem(COSName.PG, page);
                kid.setInt(COSName.MCID, mark);
                element.appendKid(new PDMarkedContentReference(kid));
                on.beginMarkedContent(COSName.getPDFName(tag.get().kind().type()), mark);
            }
            open = tag;
            begun = true;
        }

        void close() throws IOException {
            if (begun) {
                on.endMarkedContent();
                begun = false;
            }
        }

        /** A place to press. */
        void link(PDAnnotationLink link, Tag tag) {
            PDStructureElement element = element(tag);
            PDObjectReference reference = new PDObjectReference();
            reference.setReferencedObject(link);
            reference.getCOSObject().setItem(COSName.PG, page);
            element.appendKid(reference);
            link.setStructParent(parents.size());
            link.setContents(tag.said());
            parents.put(parents.size(), new PDParentTreeValue(element.getCOSObject()));
        }
    }

    Sheaf sheaf(PDPage page, PDPageContentStream on) {
        return new Sheaf(page, on);
    }

    private PDStructureElement element(Tag tag) {
        PDStructureElement known = elements.get(tag);
        if (known != null) {
            return known;
        }
        PDStructureNode within =
                tag.within().isPresent() ? element(tag.within().get()) : (PDStructureNode) whole;
        PDStructureElement element = new PDStructureElement(tag.kind().type(), within);
        switch (tag.kind()) {
            case FIGURE -> element.setAlternateDescription(tag.said());
            case HEAD -> {
                PDTableAttributeObject scope = new PDTableAttributeObject();
                scope.setScope(PDTableAttributeObject.SCOPE_COLUMN);
                element.addAttribute(scope);
            }
            case LIST -> {
                PDListAttributeObject signs = new PDListAttributeObject();
                signs.setListNumbering(PDListAttributeObject.LIST_NUMBERING_DISC);
                element.addAttribute(signs);
            }
            default -> {
                // The name says it all.
            }
        }
        within.appendKid(element);
        elements.put(tag, element);
        return element;
    }

    /** Puts the structure into the document, with what it says of itself. */
    void end(PDDocument document, String title) throws IOException {
        PDNumberTreeNode tree = new PDNumberTreeNode(PDParentTreeValue.class);
        tree.setNumbers(parents);
        root.setParentTree(tree);
        root.setParentTreeNextKey(parents.size());
        PDDocumentCatalog catalog = document.getDocumentCatalog();
        catalog.setStructureTreeRoot(root);
        PDMarkInfo marked = new PDMarkInfo();
        marked.setMarked(true);
        catalog.setMarkInfo(marked);
        PDMetadata metadata =
                new PDMetadata(
                        document,
                        new ByteArrayInputStream(about(title).getBytes(StandardCharsets.UTF_8)));
        catalog.setMetadata(metadata);
    }

    // ISO 14289-1:2014, 5 and 7.1: a file says which part it keeps to, and its title.
    private static String about(String title) {
        String said = title.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;");
        return """
                <?xpacket begin="\uFEFF" id="W5M0MpCehiHzreSzNTczkc9d"?>
                <x:xmpmeta xmlns:x="adobe:ns:meta/">
                <rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">
                <rdf:Description rdf:about="" xmlns:dc="http://purl.org/dc/elements/1.1/"
                 xmlns:pdfuaid="http://www.aiim.org/pdfua/ns/id/">
                <dc:title><rdf:Alt><rdf:li xml:lang="x-default">%s</rdf:li></rdf:Alt></dc:title>
                <pdfuaid:part>1</pdfuaid:part>
                </rdf:Description>
                </rdf:RDF>
                </x:xmpmeta>
                <?xpacket end="w"?>"""
                .formatted(said);
    }
}
