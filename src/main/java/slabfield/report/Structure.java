package slabfield.report;

import java.io.IOException;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.Map;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDNumberTreeNode;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDMarkInfo;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDMarkedContentReference;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDParentTreeValue;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureElement;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureTreeRoot;
import org.apache.pdfbox.pdmodel.documentinterchange.markedcontent.PDPropertyList;

/** The logical structure of a PDF: which marks on which page make up which heading, paragraph, cell or figure. */
final class Structure {
    private final PDStructureTreeRoot root = new PDStructureTreeRoot();
    private final PDStructureElement document = new PDStructureElement("Document", root);
    private final Map<Tag, PDStructureElement> elements = new IdentityHashMap<>();
    private final Map<Integer, COSArray> parents = new LinkedHashMap<>();

    Structure(PDDocument pdf) {
        root.appendKid(document);
        pdf.getDocumentCatalog().setStructureTreeRoot(root);
        PDMarkInfo marked = new PDMarkInfo();
        marked.setMarked(true);
        pdf.getDocumentCatalog().setMarkInfo(marked);
    }

    /** Begins what belongs to a tag. */
    void begin(PDPageContentStream content, PDPage page, int number, Tag tag) throws IOException {
        COSArray marks = parents.computeIfAbsent(number, n -> new COSArray());
        page.setStructParents(number);
        PDStructureElement element = element(tag);
        COSDictionary properties = new COSDictionary();
        properties.setInt(COSName.MCID, marks.size());
        content.beginMarkedContent(COSName.getPDFName(tag.type()), PDPropertyList.create(properties));
        PDMarkedContentReference reference = new PDMarkedContentReference();
        reference.setPage(page);
        reference.setMCID(marks.size());
        element.appendKid(reference);
        marks.add(element);
    }

    private PDStructureElement element(Tag tag) {
        PDStructureElement known = elements.get(tag);
        if (known != null) return known;
        PDStructureElement above = tag.parent().map(this::element).orElse(document);
        PDStructureElement made = new PDStructureElement(tag.type(), above);
        if (!tag.alternative().isEmpty()) made.setAlternateDescription(tag.alternative());
        above.appendKid(made);
        elements.put(tag, made);
        return made;
    }

    /** Writes down which mark belongs to which element. */
    void finish() {
        Map<Integer, PDParentTreeValue> numbers = new LinkedHashMap<>();
        parents.forEach((page, marks) -> numbers.put(page, new PDParentTreeValue(marks)));
        PDNumberTreeNode tree = new PDNumberTreeNode(PDParentTreeValue.class);
        tree.setNumbers(numbers);
        root.setParentTree(tree);
        root.setParentTreeNextKey(parents.size());
    }
}
