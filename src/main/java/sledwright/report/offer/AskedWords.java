package sledwright.report.offer;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import sledwright.domain.Catalog;
import sledwright.domain.Condition;
import sledwright.domain.EnclosureFrom;
import sledwright.domain.Limits;
import sledwright.domain.MemoryMode;
import sledwright.domain.Platform;
import sledwright.domain.Request;
import sledwright.report.page.Wording;
import sledwright.rules.target.Target;

/** What a request asks for, in a customer's words. */
public final class AskedWords {

    private static final Set<String> COUNTED = Set.of("cores", "spare-slots");

    private final Wording words;
    private final Catalog shop;

    public AskedWords(Wording words, Catalog shop) {
        this.words = words;
        this.shop = shop;
    }

    /** All of it in one sentence. */
    public String sentence(Request request) {
        return sentence(request, wishes(request));
    }

    /** The same of machines that stand and are to do it. */
    String ofStanding(Request request) {
        String all = String.join(", ", wishes(request));
        return request.machines() == 1 ? words.say("upgrade.asked.one", all) : words.say("upgrade.asked.many", request.machines(), all);
    }

    /** All of it and where the machines are to stand, which may be what stands in the way. */
    public String whole(Request request) {
        List<String> wishes = wishes(request);
        MachineFacts.site(request.limit(), words).ifPresent(wishes::add);
        return sentence(request, wishes);
    }

    private String sentence(Request request, List<String> wishes) {
        if (request.equipment().enclosure() == EnclosureFrom.OWN && !shop.enclosures().isEmpty()) {
            wishes.add(words.say("asked.enclosure.own"));
        }
        String key = wishes.isEmpty() ? "asked.anything" : "asked";
        String all = String.join(", ", wishes);
        return request.machines() == 1 ? words.say(key + ".one", all) : words.say(key + ".many", words.figure(request.machines()), all);
    }

    /** Each wish by itself; may be empty. */
    List<String> wishes(Request request) {
        List<String> wishes = new ArrayList<>();
        List<String> platforms = request.platforms().stream().sorted().toList();
        if (platforms.size() == 1) {
            wishes.add(words.say("asked.machine", shop.platform(platforms.get(0)).map(Platform::name).orElse(platforms.get(0))));
        } else if (!platforms.isEmpty()) {
            wishes.add(words.say("asked.machines", String.join(", ", platforms)));
        }
        Optional.of(request.require().work().workload().name()).filter(name -> !name.isEmpty())
                .ifPresent(name -> wishes.add(words.say("asked.workload", name)));
        if (request.require().processors() > 0) {
            wishes.add(words.counted(request.require().processors(), "asked.processors"));
        }
        Target.ALL.stream().filter(target -> target.least(request.require()) > 0).forEach(target -> wishes.add(words.say(
                key(target, request), words.figure(target.least(request.require())) + target.unit())));
        if (request.require().mode() != MemoryMode.INDEPENDENT) {
            wishes.add(words.say("asked.mode", words.say("mode." + request.require().mode().label())));
        }
        EquipmentWords equipment = new EquipmentWords(words);
        request.equipment().volumes().forEach(volume -> wishes.add(words.say("asked.volume", volume.name(), equipment.asked(volume))));
        request.equipment().cards().forEach(card -> wishes.add(equipment.asked(card)));
        new TreeMap<>(request.equipment().extras()).forEach((sku, units) -> wishes.add(words.say("asked.extra", units, sku)));
        new TreeSet<>(request.use()).forEach(sku -> wishes.add(words.say("asked.use", sku)));
        new TreeSet<>(request.forbid()).forEach(sku -> wishes.add(words.say("asked.forbid", sku)));
        addLimits(request, wishes);
        return wishes;
    }

    /** What is counted is said otherwise of one. */
    private static String key(Target target, Request request) {
        boolean one = COUNTED.contains(target.id()) && target.least(request.require()) == 1;
        return "asked." + target.id() + (one ? ".one" : "");
    }

    private void addLimits(Request request, List<String> wishes) {
        Limits limit = request.limit();
        limit.powerW().ifPresent(watts -> wishes.add(words.say("asked.load", words.figure(watts) + " W")));
        if (!limit.conditions().isEmpty()) {
            wishes.add(words.say("asked.conditions", conditions(limit)));
        }
        limit.leadDays().ifPresent(days -> wishes.add(days == 0 ? words.say("asked.days.none") : words.counted(days, "asked.days")));
        limit.by().ifPresent(by -> wishes.add(words.say("asked.by", words.day(by.day()))));
        String price = request.machines() == 1 ? "asked.price" : "asked.price.all";
        if (limit.taxed().isPresent()) {
            wishes.add(words.say(price, words.say("sum.with", words.money(shop.amount(limit.taxed().get().most())),
                    shop.stationery().tax().name())));
        } else {
            limit.price().ifPresent(most -> wishes.add(words.say(price, PriceSums.net(words.money(shop.amount(most)), shop, words))));
        }
    }

    private String either(List<String> items) {
        return String.join(" " + words.say("or") + " ", items);
    }

    String conditions(Limits limit) {
        return either(limit.conditions().stream().sorted().map(Condition::label).map(label -> words.say("condition." + label)).toList());
    }
}
