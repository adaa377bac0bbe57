package sledwright.input;

import java.io.InputStream;
import java.util.Optional;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;

/** Whether a sheet, or the table of texts, of a workbook has more cells than a table may have, or a cell where no sheet has one. */
final class SheetSize {

    /** ECMA-376 part 1, 18.3.1: the elements of sheets and of the table of texts. */
    private static final String SHEET = "worksheet";
    private static final String TEXTS = "sst";
    private static final String CELL = "c";
    private static final String TEXT = "si";
    /** Spreadsheets end at column XFD; from memory. */
    private static final int LAST_COLUMN = 16_384;
    private static final int MOST_LETTERS = 3;

    private static final XMLInputFactory XML = XMLInputFactory.newFactory();

    static {
        XML.setProperty(XMLInputFactory.SUPPORT_DTD, false);
        XML.setProperty(XMLInputFactory.IS_SUPPORTING_EXTERNAL_ENTITIES, false);
    }

    private SheetSize() {
    }

    /** What is wrong with a part of a workbook; empty: nothing, or it is neither sheet nor texts. */
    static Optional<String> tooLarge(InputStream part) {
        try {
            XMLStreamReader xml = XML.createXMLStreamReader(part);
            try {
                return xml.nextTag() == XMLStreamConstants.START_ELEMENT ? tooLarge(xml, xml.getLocalName()) : Optional.empty();
            } finally {
                xml.close();
            }
        } catch (XMLStreamException broken) {
            // Whoever reads the part will say so, if anybody does.
            return Optional.empty();
        }
    }

    private static Optional<String> tooLarge(XMLStreamReader xml, String kind) throws XMLStreamException {
        if (!kind.equals(SHEET) && !kind.equals(TEXTS)) {
            return Optional.empty();
        }
        String counted = kind.equals(SHEET) ? CELL : TEXT;
        int count = 0;
        while (xml.hasNext()) {
            if (xml.next() == XMLStreamConstants.START_ELEMENT && xml.getLocalName().equals(counted)) {
                count++;
                String address = counted.equals(CELL) ? xml.getAttributeValue(null, "r") : null;
                if (address != null && column(address) > LAST_COLUMN) {
                    return Optional.of("names a cell %s, but a sheet has no such column; save it again as an XLSX workbook"
                            .formatted(Field.shown(address)));
                }
                if (count > CsvCells.MOST_CELLS) {
                    return Optional.of("has more than %s cells; split it".formatted(CsvCells.MOST_CELLS));
                }
            }
        }
        return Optional.empty();
    }

    /** The column of an address such as C7, from 1; of one with more letters than any column has, more than the last. */
    private static int column(String address) {
        int column = 0;
        int letters = 0;
        while (letters < address.length() && Character.isLetter(address.charAt(letters))) {
            column = 26 * column + Character.toUpperCase(address.charAt(letters)) - 'A' + 1;
            letters++;
            if (letters > MOST_LETTERS) {
                return Integer.MAX_VALUE;
            }
        }
        return column;
    }
}
