package sledwright.web.api;

import java.util.List;
import sledwright.desk.Misasking;
import sledwright.desk.Reply;
import sledwright.input.Fault;
import sledwright.input.Field;
import sledwright.input.Place;
import sledwright.web.http.RefusedException;

/** Replies of the desk over HTTP. */
public final class DeskReplies {

    private static final String GIVE_ENERGY = " Maybe add years=4 and price-per-kwh=0.30 to the address, or a section"
            + " energy to the request.";

    private DeskReplies() {
    }

    /** @throws RefusedException when something is wrong in what was sent or asked */
    public static <A> A of(Reply<A> reply) {
        if (reply instanceof Reply.Faulty<A> faulty) {
            throw RefusedException.of(faulty.faults());
        }
        if (reply instanceof Reply.Misasked<A> misasked) {
            throw RefusedException.of(List.of(fault(misasked.what())));
        }
        return ((Reply.Answered<A>) reply).answer();
    }

    /** A wrong question in the words of an address. */
    private static Fault fault(Misasking what) {
        String way = what.way().filter(Misasking.Way.GiveEnergy.class::isInstance).map(energy -> GIVE_ENERGY).orElse("");
        String problem = what.problem().replaceFirst("^(: | )", "");
        return new Fault(Place.of(what.key()), problem + way, Field.shown(what.value()));
    }
}
