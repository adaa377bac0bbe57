package sledwright.cli;

import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;
import sledwright.catalog.CatalogTable;

/** Reads the name of a table of a catalogue. */
final class TableName implements ITypeConverter<CatalogTable> {

    @Override
    public CatalogTable convert(String given) {
        return CatalogTable.named(given).orElseThrow(() -> new TypeConversionException("'%s' must be one of %s"
                .formatted(given, String.join(", ", CatalogTable.labels()))));
    }
}
