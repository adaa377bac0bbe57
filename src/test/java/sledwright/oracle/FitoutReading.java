package sledwright.oracle;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import sledwright.domain.BayGroup;
import sledwright.domain.Build;
import sledwright.domain.Card;
import sledwright.domain.CardSlot;
import sledwright.domain.CardWish;
import sledwright.domain.Drive;
import sledwright.domain.DriveSupport;
import sledwright.domain.Fitout;
import sledwright.domain.Need;
import sledwright.domain.Platform;
import sledwright.domain.RaidLevel;
import sledwright.domain.Request;
import sledwright.domain.Volume;
import sledwright.domain.VolumeWish;

/** A second, naive reading of the rules of drives, cards and extras, written from their text; it shares no code with the program's. */
final class FitoutReading {

    private final Platform platform;
    private final Fitout fitout;
    private final int fitted;
    private final Request request;
    private final Set<String> broken = new HashSet<>();

    private FitoutReading(Build build, Request request) {
        this.request = request;
        platform = build.platform();
        fitout = build.fitout();
        fitted = build.processors().size();
    }

    /** The identifiers of the rules that a build breaks by its drives, cards and extras. */
    static Set<String> broken(Build build, Request request) {
        FitoutReading reading = new FitoutReading(build, request);
        reading.bays();
        reading.volumes();
        reading.driver();
        reading.cards();
        reading.extras();
        reading.targets();
        return reading.broken;
    }

    private static boolean isNvme(Drive drive) {
        return drive.link().label().equals("NVMe");
    }

    private static List<Drive> all(Volume volume) {
        List<Drive> all = new ArrayList<>(volume.drives());
        all.addAll(volume.hotSpares());
        return all;
    }

    private BayGroup group(String name) {
        for (BayGroup group : platform.expansion().bays()) {
            if (group.name().equals(name)) {
                return group;
            }
        }
        return null;
    }

    private void bays() {
        Map<String, Integer> held = new LinkedHashMap<>();
        for (Volume volume : fitout.volumes()) {
            BayGroup group = group(volume.group());
            if (group == null || group.socket().isPresent() && group.socket().getAsInt() > fitted) {
                broken.add("drive-bay");
            }
            for (Drive drive : all(volume)) {
                held.merge(volume.group(), 1, Integer::sum);
                if (group != null && !(group.formFactors().contains(drive.formFactor()) && group.links().contains(drive.link()))) {
                    broken.add("drive-bay");
                }
            }
        }
        held.forEach((name, drives) -> {
            if (group(name) != null && drives > group(name).count()) {
                broken.add("bay-count");
            }
        });
    }

    private void volumes() {
        for (Volume volume : fitout.volumes()) {
            int data = volume.drives().size();
            boolean suits = switch (volume.level().number()) {
                case 0 -> data >= 1;
                case 1 -> data == 2;
                case 5 -> data >= 3;
                case 6 -> data >= 4;
                default -> data >= 4 && data % 2 == 0;
            };
            boolean alike = true;
            for (Drive drive : all(volume)) {
                Drive first = all(volume).get(0);
                alike &= drive.kind() == first.kind() && drive.link() == first.link() && drive.formFactor() == first.formFactor()
                        && drive.capacityGb() == first.capacityGb();
            }
            if (!suits || !alike) {
                broken.add("volume-drives");
            }
        }
    }

    /** Each drive is looked up where it hangs: NVMe drives on their bays, all others on the one driver. */
    private void driver() {
        DriveSupport support = null;
        if (fitout.driver().equals(Optional.of("onboard"))) {
            support = platform.expansion().onboard().orElse(null);
        } else if (fitout.driver().isPresent() && fitout.cards().containsKey(fitout.driver().get())) {
            support = fitout.cards().get(fitout.driver().get()).support().orElse(null);
        }
        int ports = support == null ? 0 : support.ports();
        for (Volume volume : fitout.volumes()) {
            boolean needsLevel = volume.level() != RaidLevel.LEVEL_0 || volume.drives().size() != 1;
            for (Drive drive : all(volume)) {
                if (isNvme(drive)) {
                    BayGroup group = group(volume.group());
                    if (group != null && needsLevel && !group.levels().contains(volume.level())) {
                        broken.add("volume-driver");
                    }
                } else {
                    ports--;
                    if (support == null || ports < 0 || !support.links().contains(drive.link()) || needsLevel && !support.levels().contains(volume.level())) {
                        broken.add("volume-driver");
                    }
                }
            }
        }
    }

    private void cards() {
        fitout.cards().forEach((name, card) -> {
            boolean fits = false;
            for (CardSlot slot : platform.expansion().slots()) {
                boolean roomy = slot.offers().lanes() >= card.shape().lanes() && slot.offers().pcieGeneration() >= card.shape().pcieGeneration()
                        && slot.offers().lengthMm() >= card.shape().lengthMm() && slot.offers().powerW() >= card.powerW()
                        && (slot.offers().height().label().equals("full") || card.shape().height().label().equals("low"));
                fits |= slot.name().equals(name) && roomy && (slot.socket().isEmpty() || slot.socket().getAsInt() <= fitted);
            }
            if (!fits) {
                broken.add("card-slot");
            }
        });
    }

    private void extras() {
        Map<String, Integer> called = new TreeMap<>(request.equipment().extras());
        for (Need need : platform.expansion().needs()) {
            int times = need.cause() == Need.Cause.PROCESSORS ? fitted >= need.from() ? 1 : 0 : Math.max(0, platform.processors().sockets() - fitted);
            need.parts().forEach((sku, each) -> called.merge(sku, times * each, Integer::sum));
        }
        Map<String, Integer> has = new TreeMap<>();
        fitout.extras().forEach((extra, units) -> has.merge(extra.sku(), units, Integer::sum));
        called.forEach((sku, units) -> {
            if (has.getOrDefault(sku, 0) < units) {
                broken.add("needs");
            }
        });
        for (CardSlot slot : platform.expansion().slots()) {
            if (fitout.cards().containsKey(slot.name()) && slot.riser().isPresent()
                    && has.getOrDefault(slot.riser().get(), 0) <= called.getOrDefault(slot.riser().get(), 0)) {
                broken.add("riser");
            }
        }
    }

    private void targets() {
        for (VolumeWish wish : request.equipment().volumes()) {
            boolean met = false;
            for (Volume volume : fitout.volumes()) {
                double smallest = volume.drives().stream().mapToDouble(Drive::capacityGb).min().orElse(0);
                boolean taken = all(volume).stream().allMatch(drive -> (wish.kind().isEmpty() || wish.kind().get() == drive.kind())
                        && (wish.link().isEmpty() || wish.link().get() == drive.link()));
                met |= volume.name().equals(wish.name()) && volume.level() == wish.level() && taken && volume.hotSpares().size() >= wish.hotSpares()
                        && EveryFitout.usable(volume.level(), volume.drives().size(), smallest) >= wish.usableGb() - 1e-7;
            }
            if (!met) {
                broken.add("storage-capacity");
            }
        }
        if (!serve(request.equipment().cards(), new ArrayList<>(fitout.cards().values()))) {
            broken.add("cards");
        }
    }

    /** Whether the cards serve every entry, each by one part number and no card two of them. */
    private static boolean serve(List<CardWish> wishes, List<Card> left) {
        if (wishes.isEmpty()) {
            return true;
        }
        CardWish wish = wishes.get(0);
        for (Card card : Set.copyOf(left)) {
            boolean serves = wish.sku().isPresent() ? card.sku().equals(wish.sku().get())
                    : card.kind() == wish.kind().orElseThrow() && card.ports() >= wish.ports() && card.portGbit() >= wish.portGbit();
            List<Card> rest = new ArrayList<>(left);
            int taken = 0;
            while (taken < wish.count() && rest.remove(card)) {
                taken++;
            }
            if (serves && taken == wish.count() && serve(wishes.subList(1, wishes.size()), rest)) {
                return true;
            }
        }
        return false;
    }
}
