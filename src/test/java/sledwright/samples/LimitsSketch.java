package sledwright.samples;

import java.util.HashSet;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.OptionalLong;
import sledwright.domain.Condition;
import sledwright.domain.Limits;

/** The limits of a request in the making. */
public final class LimitsSketch {

    private OptionalLong price = OptionalLong.empty();
    private OptionalDouble powerW = OptionalDouble.empty();
    private OptionalInt leadDays = OptionalInt.empty();
    private OptionalDouble inletC = OptionalDouble.empty();
    private double altitudeM;
    private OptionalDouble mainsV = OptionalDouble.empty();
    private final HashSet<Condition> conditions = new HashSet<>();

    /** Minor units. */
    public LimitsSketch price(long most) {
        price = OptionalLong.of(most);
        return this;
    }

    public LimitsSketch powerW(double most) {
        powerW = OptionalDouble.of(most);
        return this;
    }

    public LimitsSketch leadDays(int most) {
        leadDays = OptionalInt.of(most);
        return this;
    }

    public LimitsSketch site(double inletAirC, double metres) {
        inletC = OptionalDouble.of(inletAirC);
        altitudeM = metres;
        return this;
    }

    public LimitsSketch mainsV(double volts) {
        mainsV = OptionalDouble.of(volts);
        return this;
    }

    public LimitsSketch conditions(Condition... accepted) {
        conditions.addAll(List.of(accepted));
        return this;
    }

    public Limits make() {
        return new Limits(price, powerW, leadDays, inletC, altitudeM, mainsV, conditions);
    }
}
