package sledwright.web.shop;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sledwright.desk.Desk;
import sledwright.domain.Catalog;
import sledwright.input.FaultsException;
import sledwright.samples.Folders;

class LiveCatalogTest {

    @TempDir Path work;
    private final List<ShopState> shown = new ArrayList<>();
    private LiveCatalog shop;

    @BeforeEach
    void open() throws IOException {
        shop = new LiveCatalog(Folders.copy(Folders.SHOP, work.resolve("shop")), shown::add);
    }

    private void write(String file, String from, String to) throws IOException {
        Path path = work.resolve("shop").resolve(file);
        String text = Files.readString(path);
        assertThat(text).contains(from);
        Files.writeString(path, text.replace(from, to));
    }

    private static long price(Catalog catalog) {
        return catalog.lots("H1-08").get(0).breaks().get(0).unitPrice();
    }

    @Test
    void filesThatRestAreReadAnew() throws IOException {
        write("offers.csv", "24.50", "27.50");
        shop.look();
        assertThat(price(shop.state().catalog())).as("somebody may still be writing").isEqualTo(2450);
        shop.look();
        assertThat(price(shop.state().catalog())).isEqualTo(2750);
        assertThat(shown).as("each desk is warmed up before it answers").hasSize(2).last().isSameAs(shop.state());
        ShopState now = shop.state();
        shop.look();
        assertThat(shop.state()).as("nothing has changed").isSameAs(now);
    }

    @Test
    void theOldOneStaysWhileTheNewOneHasFaults() throws IOException {
        Desk before = shop.state().desk();
        write("offers.csv", "24.50", "cheap");
        shop.look();
        shop.look();
        assertThat(shop.state().desk()).isSameAs(before);
        assertThat(shop.state().faults()).singleElement().satisfies(fault -> assertThat(fault.toString()).contains("offers.csv:4", "cheap"));
        write("offers.csv", "cheap", "24.60");
        shop.look();
        shop.look();
        assertThat(shop.state().faults()).isEmpty();
        assertThat(price(shop.state().catalog())).isEqualTo(2460);
    }

    @Test
    void aFileThatComesOrGoesIsAChange() throws IOException {
        Files.delete(work.resolve("shop/cards.csv"));
        shop.look();
        shop.look();
        assertThat(shop.state().catalog().card("CTL-8")).isEmpty();
    }

    @Test
    void aShopWithFaultsIsNotOpened() throws IOException {
        write("offers.csv", "24.50", "cheap");
        assertThatThrownBy(() -> new LiveCatalog(work.resolve("shop"), shown::add)).isInstanceOf(FaultsException.class);
    }
}
