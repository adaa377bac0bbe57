package sledwright.report.offer;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import sledwright.desk.view.AnswerDay;
import sledwright.desk.view.BuildView;
import sledwright.domain.EnclosureFrom;
import sledwright.domain.Limits;
import sledwright.domain.Request;
import sledwright.report.page.Wording;

/** What a customer gets, in labels and words. */
final class MachineFacts {

    private static final String ENCLOSURE = "what.power.enclosure";

    private final Wording words;
    private final AnswerDay day;

    /** @param day from which lead times count */
    MachineFacts(Wording words, AnswerDay day) {
        this.words = words;
        this.day = day;
    }

    /** Of a machine that was asked for. */
    List<OfferPage.Fact> of(BuildView build, Request request) {
        return of(build, request.limit(), request.equipment().enclosure() == EnclosureFrom.OWN ? "what.power.enclosure.own" : ENCLOSURE);
    }

    /** Of a machine that stands already. */
    List<OfferPage.Fact> of(BuildView build) {
        return of(build, Limits.NONE, ENCLOSURE);
    }

    /**
     * @param limit     says where the machines are to stand
     * @param enclosure the words for an enclosure that is not of the build
     */
    private List<OfferPage.Fact> of(BuildView build, Limits limit, String enclosure) {
        List<OfferPage.Fact> facts = new ArrayList<>();
        facts.add(new OfferPage.Fact(build.count() == 1 ? words.say("what.machine") : words.say("what.machines", build.count()),
                build.bare().name()));
        build.bare().processor().ifPresent(processor -> facts.add(new OfferPage.Fact(words.say("what.processors"),
                words.say("what.processors.words", build.bare().processors(), processor.sku(), processor.cores(),
                        words.figure(processor.baseGhz()), words.figure(processor.allCoreGhz())))));
        facts.add(new OfferPage.Fact(words.say("what.memory"), SideBySide.memory(build, words)));
        EquipmentWords equipment = new EquipmentWords(words);
        facts.add(new OfferPage.Fact(words.say("what.power"),
                build.bare().supply().map(sku -> "%s \u00d7 %s".formatted(build.bare().supplies(), sku))
                .orElseGet(() -> equipment.enclosures(build.heaviest().fitout()).map(fed -> words.say("what.power.enclosures", fed))
                        .orElse(words.say(enclosure)))));
        facts.addAll(equipment.facts(build.heaviest().fitout()));
        site(limit, words).ifPresent(site -> facts.add(new OfferPage.Fact(words.say("what.site"), site)));
        facts.add(new OfferPage.Fact(words.say("what.lead"), build.leadDays() == 0 ? words.say("what.lead.none")
                : words.say("what.lead.days", SideBySide.days(build.leadDays(), words), words.day(day.in(build.leadDays())))));
        return facts;
    }

    /** Where the machine is to stand, as far as the request says. */
    static Optional<String> site(Limits limit, Wording words) {
        List<String> site = new ArrayList<>();
        limit.inletC().ifPresent(celsius -> site.add(words.say("what.site.air", words.figure(celsius))));
        if (limit.altitudeM() != 0) {
            site.add(words.say("what.site.altitude", words.figure(limit.altitudeM())));
        }
        limit.mainsV().ifPresent(volts -> site.add(words.say("what.site.mains", words.figure(volts))));
        return site.isEmpty() ? Optional.empty() : Optional.of(words.list(site));
    }
}
