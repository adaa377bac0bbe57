package sledwright.cli;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CopyOnWriteArrayList;
import sledwright.browser.Browser;
import sledwright.samples.Folders;
import sledwright.web.Servers;
import sledwright.web.WebServer;
import sledwright.web.Wire;
import sledwright.web.users.PasswordHash;
import sledwright.web.users.Role;
import sledwright.web.users.User;
import sledwright.web.users.UsersFile;

/** Pictures of every view of the server's page: on a desk, on a desk in the dark, on a phone. */
final class Views {

    private static final int SHOWN_HEIGHT = 1000;
    private static final double DESK_SCALE = 0.62;
    private static final double PHONE_SCALE = 0.8;
    private static final String YAML = "application/yaml";
    private static final String MAIL = "Hello,\\nwe need 2 machines with 16 cores and 128 GB RAM each, two 480 GB SSDs in RAID 1, by 18 December, at most 900 EUR each. A GPU would be nice.\\nRegards";

    private static final String PLAN = """
            kind: restock
            name: sleds for two months
            supply:
              - { sku: FINCH-E4, supplier: Saltmarsh Leasing, unit_cost: 85.56, available: 40, lead_days: 16, condition: used }
              - { sku: S2-14, supplier: Saltmarsh Leasing, unit_cost: 14.20, available: 60, lead_days: 9, condition: used }
            horizon_months: 2
            budget: 2000
            depreciation: { platforms: 0.02, processors: 0.035, memory: 0.03, cooling: 0.01 }
            samples: 60
            classes:
              - { name: broad sled, demand: { poisson: 28 }, platforms: [FINCH-S4], require: { cores: 28, memory_gb: 256, processors: 2 }, limit: { lead_days: 10 }, margin: 150, loss: 15 }
            """;

    private final Path folder;
    private final Browser browser;
    private final URI server;

    private Views(Path folder, Browser browser, URI server) {
        this.folder = folder;
        this.browser = browser;
        this.server = server;
    }

    static void make(Path folder, Browser browser) throws IOException {
        Path work = Files.createTempDirectory("views");
        try (WebServer web = Servers.start(Folders.copy(Path.of("catalogs/heronfold-yard"), work.resolve("yard")), work.resolve("book.db"), Optional.empty(), Servers.ROOMY, new CopyOnWriteArrayList<>())) {
            new Views(folder, browser, web.address()).all(work);
        }
        Path users = work.resolve("users.csv");
        new UsersFile(users).write(Map.of("anna", new User("anna", Role.SALES, PasswordHash.of("nobody needs to know"))));
        try (WebServer web = Servers.start(Path.of("catalogs/heronfold-yard"), work.resolve("book.db"), Optional.of(users), Servers.ROOMY, new CopyOnWriteArrayList<>())) {
            new Views(folder, browser, web.address()).view("page-login", "login", "document.querySelector('#password')", () -> { });
        }
    }

    private void all(Path work) throws IOException {
        String answered = "document.querySelector('.seal') && (document.querySelector('.way') || document.querySelector('.spot') && document.querySelector('.step'))";
        view("page", "#require.cores=20&require.memory_gb=256&limit.lead_days=5", answered, () -> { });
        view("page-drawing", "#require.cores=20&require.memory_gb=256&require.storage.0.name=system&require.storage.0.usable_gb=400&require.storage.0.level=1", answered, () ->
                browser.click("[data-do=board]").until("document.querySelector('.board svg')"), ".board");
        view("page-stuck", "#require.cores=20&require.memory_gb=256&limit.price=150", answered, () -> { });
        view("page-mail", "#require.cores=8", answered, () -> {
            browser.ask("document.getElementById('from-mail').open = true; document.getElementById('mail').value = '" + MAIL + "'");
            browser.click("#mail-form button").until("location.hash.includes('machines')").until("!document.getElementById('answer').hasAttribute('aria-busy')").until(answered);
        });
        view("page-board", "#require.cores=16&require.memory_gb=128&require.storage.0.name=system&require.storage.0.usable_gb=400&require.storage.0.level=1&require.cards.0.kind=network"
                + "&require.cards.0.ports=2&require.cards.0.port_gbit=10&require.cards.0.count=1", "document.querySelector('[data-do=hand]')", () -> browser.click("[data-do=hand]")
                .until("document.querySelector('.place')").click("[data-place='module 1A1']").until("!document.getElementById('panel').hidden").click("[data-place='module 1A2']")
                .until("document.querySelector('.broken li')"));
        for (String[] kept : new String[][] {{"Orchard%20Surveys", "20", "send?hold"}, {"Nordmole%20Freight", "12", ""}, {"Gannet%20Archive", "32", "send"}}) {
            String saved = Wire.post(server, "/api/book?by=anna&customer=" + kept[0], YAML, "{ kind: quote, name: node of %s cores, require: { cores: %s, memory_gb: 128 } }".formatted(kept[1], kept[1])).body();
            if (!kept[2].isEmpty()) {
                Wire.post(server, "/api/book/" + saved.replaceAll("(?s).*\"number\": \"([-0-9]+)\".*", "$1") + "/" + kept[2] + (kept[2].contains("?") ? "&" : "?") + "by=anna", YAML, "");
            }
        }
        String year = String.valueOf(java.time.Year.now().getValue());
        view("page-book", "book#" + year + "-0001", "document.querySelector('#history tbody tr') && document.querySelector('#paper').textContent.length > 99", () -> { });
        view("page-work", "work", "true", () -> browser.click("#go").until("/ s: /.test(document.querySelector('#progress').textContent) || document.querySelector('#progress').textContent === 'Done.'")
                .click("#stop").until("document.querySelector('#progress').textContent === 'Done.'"));
        String link = Wire.post(server, "/api/links?may=require.cores=8..32&may=require.memory_gb=64..512&may=limit.conditions=new,refurbished,used", YAML,
                "{ kind: quote, name: Orchard Surveys render node, require: { cores: 20, memory_gb: 128 }, limit: { conditions: [refurbished] }, alternatives: 4 }").body();
        view("page-customer", link.replaceAll("(?s).*\"address\": \"http://[^/]*/([^\"]*)\".*", "$1"), "document.querySelector('.compared')", () -> { });
        view("page-stock", "stock", "document.querySelector('.shelf')", () -> { });
        view("page-plan", "stock", "document.querySelector('.shelf')", () -> {
            browser.ask("document.getElementById('plan').value = " + quoted(PLAN));
            browser.click("#go").until("document.querySelector('#progress').textContent === 'Done.'")
                    .ask("document.querySelectorAll('#planned details').forEach(each => { each.open = /budget/.test(each.textContent.slice(0, 60)) })");
            browser.ask("document.querySelectorAll('.verdict')[0].remove(); document.querySelectorAll('.stuck').forEach(each => each.remove()); document.querySelectorAll('#answer > .options').forEach(each => each.remove())");
        });
        past();
        view("page-asked", "asked", "document.querySelector('.columns')", () -> { });
        lose(work.resolve("yard/offers.csv"), year + "-0001");
        view("page-promises", "promises", "document.querySelector('#draw')", () -> browser.click("#draw").until("document.querySelector('#apply:not([hidden])')"));
        Path list = Files.writeString(work.resolve("palisander-list.csv"), Files.readString(Path.of("docs/examples/palisander-list.csv"), StandardCharsets.UTF_8));
        view("page-catalogue", "catalogue", "document.querySelector('#bring')", () -> {
            try {
                browser.upload("#list", list).ask("document.getElementById('mapping').value = " + quoted(Files.readString(Path.of("docs/examples/palisander-list.yaml"))));
            } catch (IOException unreadable) {
                throw new UncheckedIOException(unreadable);
            }
            browser.click("#bring button").until("document.querySelector('#apply')");
        });
    }

    /** Quotes of the months before, some bought, some lost. */
    private void past() {
        String[][] all = {{"20", "64", "5", "accept"}, {"20", "64", "4", "accept"}, {"12", "32", "4", "decline?reason=too%20dear"}, {"20", "64", "3", "decline?reason=too%20dear"},
            {"12", "32", "2", "accept"}, {"12", "32", "2", "decline?reason=comes%20too%20late"}, {"32", "256", "1", "accept"}, {"20", "64", "1", "decline?reason=too%20dear"},
            {"12", "32", "1", "accept"}, {"20", "64", "0", "accept"}};
        for (String[] one : all) {
            String day = java.time.LocalDate.now().minusMonths(Long.parseLong(one[2])).minusDays(3).toString();
            String saved = Wire.post(server, "/api/book?by=anna&customer=Fenland&today=" + day, YAML, "{ kind: quote, name: node of %s cores, require: { cores: %s, memory_gb: %s } }"
                    .formatted(one[0], one[0], one[1])).body();
            String at = "/api/book/" + saved.replaceAll("(?s).*\"number\": \"([-0-9]+)\".*", "$1");
            for (String step : new String[] {"send", one[3]}) {
                Wire.post(server, at + "/" + step + (step.contains("?") ? "&" : "?") + "by=anna&today=" + day, YAML, "");
            }
            if (one[3].equals("accept")) {
                Wire.post(server, at + "/pick?by=anna&today=" + day, YAML, "");
            }
        }
    }

    /** A quote is accepted, and the lots of its memory are lost. */
    private void lose(Path offers, String number) throws IOException {
        Wire.post(server, "/api/book/" + number + "/accept?by=anna", YAML, "");
        String taken = Wire.get(server, "/api/book/" + number).body();
        StringBuilder left = new StringBuilder();
        for (String line : Files.readAllLines(offers)) {
            String[] cells = line.split(",", -1);
            boolean gone = cells[0].matches("..[345]R.*") && !line.contains("\"") && taken.contains("\"lot\": \"" + cells[1] + "\"");
            cells[6] = gone ? "0" : cells[6];
            left.append(String.join(",", cells)).append('\n');
        }
        Files.writeString(offers, left.toString());
    }

    private static String quoted(String text) {
        return "'" + text.replace("\\", "\\\\").replace("'", "\\'").replace("\n", "\\n") + "'";
    }

    private void view(String name, String path, String condition, Runnable act) throws IOException {
        if (!name.contains(System.getProperty("sledwright.pictures", ""))) {
            return;
        }
        view(name, path, condition, act, "html");
    }

    /** @param from what stands at the top of the picture */
    private void view(String name, String path, String condition, Runnable act, String from) throws IOException {
        browser.visit(server + path).until(condition);
        act.run();
        for (Object[] shape : new Object[][] {{"", Browser.DESKTOP, false, DESK_SCALE}, {"-dark", Browser.DESKTOP, true, DESK_SCALE}, {"-phone", Browser.PHONE, false, PHONE_SCALE}}) {
            browser.screen((int) shape[1], (boolean) shape[2]).until("document.querySelector('.enter') || getComputedStyle(document.getElementById('answer')).opacity === '1'").ask("document.querySelector('" + from + "').scrollIntoView()");
            Files.write(folder.resolve(name + shape[0] + ".png"), browser.picture(SHOWN_HEIGHT, (double) shape[3]));
        }
    }
}
