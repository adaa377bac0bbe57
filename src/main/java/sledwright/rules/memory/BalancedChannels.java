package sledwright.rules.memory;

import java.util.Comparator;
import java.util.List;
import sledwright.domain.Channel;
import sledwright.rules.Machine;
import sledwright.rules.Rule;
import sledwright.rules.Violation;

/** {@value #ID}: every channel of every fitted socket holds the same capacity, where that is asked for. */
public final class BalancedChannels extends Rule<Machine> {

    public static final String ID = "balanced-channels";
    public static final String KEY = "require.balanced";

    public BalancedChannels() {
        super(ID, "Every channel of the fitted sockets holds the same capacity where the request or the shop wants it so.", KEY);
    }

    /**
     * Whether channels may stand beside each other.
     *
     * @param asked     whether they are to be balanced
     * @param channels  how many there are, empty and covered ones with them
     * @param totalGb   what they hold together
     * @param fullestGb what the fullest of them holds
     */
    public static boolean allows(boolean asked, int channels, int totalGb, int fullestGb) {
        return !asked || totalGb == channels * fullestGb;
    }

    @Override
    public List<Violation> judge(Machine machine) {
        List<Channel> channels = machine.build().channels().stream()
                .filter(channel -> Sockets.fitted(machine.build(), channel.socket())).toList();
        if (channels.isEmpty()) {
            return List.of();
        }
        Comparator<Channel> byCapacity = Comparator.comparingInt(Channel::capacityGb);
        Channel fullest = channels.stream().max(byCapacity).orElseThrow();
        Channel emptiest = channels.stream().min(byCapacity).orElseThrow();
        int totalGb = channels.stream().mapToInt(Channel::capacityGb).sum();
        return allows(machine.request().require().populated().balanced(), channels.size(), totalGb, fullest.capacityGb()) ? List.of()
                : List.of(broken(emptiest.name(), "Channel %s holds %s GB and channel %s %s GB; all channels are to hold the same.",
                        emptiest.name(), emptiest.capacityGb(), fullest.name(), fullest.capacityGb()));
    }
}
