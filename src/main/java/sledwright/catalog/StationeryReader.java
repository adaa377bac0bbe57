package sledwright.catalog;

import java.util.IllformedLocaleException;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import sledwright.domain.Paper;
import sledwright.domain.SalesTax;
import sledwright.domain.Stationery;
import sledwright.input.Faults;
import sledwright.input.Field;
import sledwright.input.Section;
import sledwright.input.Vocabulary;

/** Reads the section {@code document} of {@code catalog.yaml}: what the shop puts on its documents. */
final class StationeryReader {

    private static final Vocabulary<Paper> PAPERS = Vocabulary.ofAnyCase(List.of(Paper.values()), Paper::label);
    private static final List<String> LANGUAGES = List.of(Locale.getISOLanguages());

    private final Section section;
    private final Faults faults;

    private StationeryReader(Section section) {
        this.section = section;
        this.faults = section.faults();
    }

    /** Plain stationery where the file has no such section. */
    static Stationery read(Section top) {
        return top.section("document").map(section -> new StationeryReader(section).stationery()).orElse(Stationery.PLAIN);
    }

    private Stationery stationery() {
        Stationery stationery = new Stationery(lines("address"), lines("contact"),
                new SalesTax(section.decimalIfAny("tax_percent", CatalogBounds.TAX_PERCENT),
                section.text("tax_name", SalesTax.NONE.name())),
                section.oneOrList("terms").stream().flatMap(term -> term.paragraph(faults).stream()).toList(),
                section.wholeIfAny("valid_days", CatalogBounds.VALID_DAYS).map(OptionalInt::of).orElse(OptionalInt.empty()),
                section.field("locale").flatMap(this::locale).orElse(Locale.ENGLISH),
                section.wordIfAny("paper", PAPERS).orElse(Paper.A4));
        section.finish();
        return stationery;
    }

    private List<String> lines(String key) {
        return section.oneOrList(key).stream().flatMap(line -> line.words(faults).stream()).toList();
    }

    private Optional<Locale> locale(Field field) {
        try {
            Locale locale = new Locale.Builder().setLanguageTag(field.text()).build();
            if (LANGUAGES.contains(locale.getLanguage())) {
                return Optional.of(locale);
            }
        } catch (IllformedLocaleException noTag) {
            // Reported below.
        }
        field.fault("must be a language, with a country where that matters (BCP 47), such as en, de or fr-CH", faults);
        return Optional.empty();
    }
}
