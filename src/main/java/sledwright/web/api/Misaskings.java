package sledwright.web.api;

import sledwright.desk.Misasking;
import sledwright.input.Fault;
import sledwright.input.Field;
import sledwright.input.Place;

/** Wrong questions in the words of an address. */
final class Misaskings {

    private static final String GIVE_ENERGY = " Maybe add years=4 and price-per-kwh=0.30 to the address, or a section"
            + " energy to the request.";

    private Misaskings() {
    }

    static Fault fault(Misasking what) {
        String way = what.way().filter(Misasking.Way.GiveEnergy.class::isInstance).map(energy -> GIVE_ENERGY).orElse("");
        String problem = what.problem().replaceFirst("^(: | )", "");
        return new Fault(Place.of(what.key()), problem + way, Field.shown(what.value()));
    }
}
