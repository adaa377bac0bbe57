package sledwright.request;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** For whom a request says that it is. */
class AddresseeTest {

    private static Addressee of(String request, String... sets) {
        return new Addressee(request.getBytes(StandardCharsets.UTF_8), List.of(sets));
    }

    private static String text(Addressee addressee) {
        return new String(addressee.request(), StandardCharsets.UTF_8);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
            "customer: Fenland # by mail\\nname: x # two|customer: [\"Rival Ltd\"]\\nname: x # two",
            "name: x\\ncustomer: [Fenland, Dyke 2]\\n|name: x\\ncustomer: [\"Rival Ltd\"]\\n",
            "customer:\\n  - Fenland\\n  - Dyke 2\\n\\n# then\\nname: x|customer: [\"Rival Ltd\"]\\n\\n# then\\nname: x",
            "customer:\\n- Fenland\\n- 'Löschteich 2 🌊'\\nname: x|customer: [\"Rival Ltd\"]\\nname: x",
            "note: 🌊🌊\\ncustomer: Fenland\\nname: x|note: 🌊🌊\\ncustomer: [\"Rival Ltd\"]\\nname: x",
            "{\"customer\": [\"Fenland\"], \"name\": \"x\"}|{\"customer\": [\"Rival Ltd\"], \"name\": \"x\"}",
            "customer: >-\\n  Fenland\\n  Survey\\nname: x|customer: [\"Rival Ltd\"]\\nname: x",
            "a: { customer: Fenland }\\ncustomer: Else|a: { customer: Fenland }\\ncustomer: [\"Rival Ltd\"]",
            "# of Fenland\\ncustomer: Fenland\\nname: 'a \"b\\' # c\\nlist: [1, ~, null]|customer: [\"Rival Ltd\"]\\nname: \"a \\\"b\"\\nlist: [1, ~, ~]\\n",
            "customer: [&who Fenland]\\nname: *who|customer: [\"Rival Ltd\"]\\nname: Fenland\\n",
            "? customer\\n: Fenland\\nname: x|customer: [\"Rival Ltd\"]\\nname: x\\n",
            "customer: Fenland\\nname: \"a\\tb\\u200bc\"\\n# fenland|customer: [\"Rival Ltd\"]\\nname: \"a\\U00000009b\\U0000200bc\"\\n"})
    void anotherIsNamedInItsPlace(String before, String after) {
        String request = before.replace("\\n", "\n").replace("b\\'", "b'");
        assertThat(text(of(request).of("Rival Ltd"))).isEqualTo(after.replace("\\n", "\n"));
        assertThat(of(after.replace("\\n", "\n")).lines()).containsExactly("Rival Ltd");
    }

    @Test
    void whoeverIsNamedAlreadyKeepsTheirLines() {
        String request = "customer: [Fenland, Dyke 2]\n";
        assertThat(text(of(request).of(" fenland"))).isEqualTo(request);
        assertThat(of("name: x\n").of("Rival Ltd").lines()).isEmpty();
        assertThat(of("name: x\n", "customer=[Rival Ltd, Mill 1]").of("Rival Ltd").lines()).containsExactly("Rival Ltd", "Mill 1");
        assertThat(of("not: [readable").of("Rival Ltd").lines()).isEmpty();
    }

    @Test
    void whatWasSaidBesideItCountsAndIsNotKeptOfAnother() {
        Addressee moved = of("customer: Fenland\n", "customer=[Rival Ltd, Mill 1]", "machines=2").of("Rival Ltd");
        assertThat(text(moved)).isEqualTo("customer: [\"Rival Ltd\", \"Mill 1\"]\n");
        assertThat(moved.sets()).containsExactly("machines=2");
        Addressee other = of("name: x\n", "customer = Fenland", "customers=1").of("Rival Ltd");
        assertThat(other.sets()).containsExactly("customers=1");
        assertThat(other.lines()).isEmpty();
        assertThat(text(of("customer: [Fenland, Dyke 2]\n", "customer.0=Rival Ltd").of("Rival Ltd"))).isEqualTo("customer: [\"Rival Ltd\", \"Dyke 2\"]\n");
        assertThat(text(of("customer: Fenland\n", "customer=").of("Rival Ltd"))).isEqualTo("customer: [\"Rival Ltd\"]\n");
    }

    @Test
    void requestsSayWhomTheyName() {
        assertThat(of("customer: [Fenland, Dyke 2]\n").names("FENLAND")).isTrue();
        assertThat(of("customer: \"Fenl\\u0061nd\"\n").names("Fenland")).isTrue();
        assertThat(of("customer: Fenland\n", "customer=Other").names("Fenland")).isTrue();
        assertThat(of("name: Fenland\n").names("Fenland")).isFalse();
        assertThat(of("customer: Dyke 2\n").names("Fenland")).isFalse();
    }
}
