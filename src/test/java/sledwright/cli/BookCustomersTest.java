package sledwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sledwright.samples.Folders;

/** Papers of a quote are addressed to its customer, whomever the request names. */
class BookCustomersTest {

    @TempDir
    Path folder;

    private Path named;
    private Path plain;

    @BeforeEach
    void write() throws IOException {
        Folders.copy(Folders.SHOP, folder.resolve("shop"));
        String rest = "kind: quote\ncatalog: shop\nrequire: { cores: 8, memory_gb: 16 }\nenclosure: own\n";
        named = Files.writeString(folder.resolve("named.yaml"), "# for Fenland Survey\ncustomer: [Fenland Survey, survey@fenland.example] # or Dyke 2\n" + rest);
        plain = Files.writeString(folder.resolve("plain.yaml"), rest);
    }

    private Run book(String... words) {
        List<String> all = new ArrayList<>(List.of("book"));
        all.addAll(List.of(words));
        all.addAll(List.of("--book", folder.resolve("b.db").toString(), "--today", "2026-03-02"));
        return Run.of(Map.of("USER", "anna"), false, all.toArray(String[]::new));
    }

    private String mail(String number) {
        return book("show", number, "--format", "eml").out();
    }

    @Test
    void aCopyForAnotherNamesNothingOfTheFirst() throws IOException {
        book("save", named.toString(), "--customer", "Fenland Survey", "--note", "fenland calls late");
        assertThat(mail("2026-0001")).contains("To: Fenland Survey <survey@fenland.example>").contains("Dear Fenland Survey,");
        assertThat(book("copy", "2026-0001", "--customer", "Rival Ltd").out()).isEqualTo("2026-0002\n");
        assertThat(mail("2026-0002")).contains("To: Rival Ltd", "Dear Rival Ltd,").doesNotContainIgnoringCase("fenland");
        assertThat(book("export", "--customer", "Rival Ltd", "--format", "json").out()).doesNotContainIgnoringCase("fenland").contains("Rival Ltd");
        assertThat(book("revise", "2026-0002").code()).isEqualTo(ExitCode.DONE);
        assertThat(mail("2026-0002")).contains("version 2", "Dear Rival Ltd,");
        assertThat(book("copy", "2026-0001", "--set", "machines=2").out()).isEqualTo("2026-0003\n");
        assertThat(mail("2026-0003")).contains("To: Fenland Survey <survey@fenland.example>");
        assertThat(book("history", "2026-0003").out()).contains("Note: fenland calls late");
        assertThat(book("erase", "--customer", "Fenland Survey").err()).isEqualTo("erased from 2 quotes\n");
        assertThat(new String(Files.readAllBytes(folder.resolve("b.db")), StandardCharsets.ISO_8859_1)).doesNotContainIgnoringCase("fenland");
        assertThat(book("show", "2026-0002", "--for", "customer").out()).startsWith("Dear Rival Ltd,");
    }

    @Test
    void whoeverIsNamedWhenItIsKeptIsAddressed() {
        book("save", named.toString(), "--customer", "Alpha Ltd");
        assertThat(mail("2026-0001")).contains("To: Alpha Ltd", "Dear Alpha Ltd,").doesNotContain("Fenland");
        book("save", plain.toString(), "--customer", "Beta Ltd");
        assertThat(mail("2026-0002")).contains("To: Beta Ltd", "Dear Beta Ltd,");
        assertThat(book("show", "2026-0002", "--format", "html").out()).contains("Beta Ltd");
        book("copy", "2026-0001", "--customer", "Gamma Ltd", "--set", "customer=[Gamma Ltd, gamma@mill.example]");
        assertThat(mail("2026-0003")).contains("To: Gamma Ltd <gamma@mill.example>");
    }
}
