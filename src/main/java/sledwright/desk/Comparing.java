package sledwright.desk;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Stream;
import sledwright.compare.Comparer;
import sledwright.compare.Comparison;
import sledwright.compare.Cost;
import sledwright.desk.view.CompareAnswer;
import sledwright.desk.view.CompareView;
import sledwright.domain.Platform;
import sledwright.domain.Request;
import sledwright.generator.Axis;
import sledwright.generator.Search;
import sledwright.generator.time.Deadline;
import sledwright.input.Nearest;
import sledwright.request.Job;

/** What money buys. */
final class Comparing {

    private static final double MOST_SHARE = 10;

    private final Job.Quote job;
    private final Search search;
    private final CompareQuestion asked;

    private Comparing(Job.Quote job, Search search, CompareQuestion asked) {
        this.job = job;
        this.search = search;
        this.asked = asked;
    }

    static Reply<CompareAnswer> answer(Job.Quote job, Search search, CompareQuestion asked, Terms terms) {
        Comparing comparing = new Comparing(job, search, asked);
        Optional<Misasking> wrong = comparing.wrong();
        return wrong.isPresent() ? new Reply.Misasked<>(wrong.get()) : new Reply.Answered<>(comparing.answer(terms));
    }

    private CompareAnswer answer(Terms terms) {
        Request request = asked.platforms().isEmpty() ? job.request() : job.request().withPlatforms(Set.copyOf(asked.platforms()));
        Deadline deadline = terms.deadline();
        Comparer comparer = new Comparer(job.catalog(), search);
        Comparison curves = comparer.compare(request, job.energy(), costs(), figures(), asked.byPlatform(),
                asked.together().isEmpty() ? deadline : deadline.share(2));
        Comparison comparison = asked.together().isEmpty() ? curves
                : curves.with(comparer.together(request, asked.together().getAsDouble(), deadline));
        return new CompareAnswer(CompareView.of(comparison, job.catalog()).with(job.discount()), job);
    }

    private List<Cost> costs() {
        return asked.over().isEmpty() && job.energy().isEmpty() ? List.of(Cost.PRICE) : over();
    }

    private List<Cost> over() {
        return asked.over().isEmpty() ? List.of(Cost.values())
                : asked.over().stream().flatMap(word -> Cost.named(word).stream()).distinct().toList();
    }

    private List<Axis> figures() {
        return asked.figures().isEmpty() ? Axis.of(job.request().require())
                : asked.figures().stream().flatMap(word -> Axis.named(word).stream()).distinct().toList();
    }

    private Optional<Misasking> wrong() {
        return Stream.of(throughputOfWorkload(),
                        strange("figure", asked.figures(), word -> Axis.named(word).isPresent(), CompareQuestion.FIGURES),
                        strange("over", asked.over(), word -> Cost.named(word).isPresent(), CompareQuestion.COSTS),
                        asked.platforms().stream().flatMap(sku -> strange(sku).stream()).findFirst(), withoutEnergy(), strangeShare())
                .flatMap(Optional::stream).findFirst();
    }

    private static Optional<Misasking> strange(String key, List<String> words, Predicate<String> isKnown, List<String> known) {
        return words.stream().filter(isKnown.negate()).findFirst()
                .map(word -> Misasking.of(key, word, "must be one of " + String.join(", ", known)));
    }

    private Optional<Misasking> strange(String platform) {
        if (job.catalog().platform(platform).isEmpty()) {
            return Optional.of(Misasking.of("platform", platform, "is no platform of the catalogue"
                    + new Nearest(job.catalog().platforms().stream().map(Platform::sku).toList()).hint(platform)));
        }
        if (!job.request().platforms().isEmpty() && !job.request().platforms().contains(platform)) {
            return Optional.of(Misasking.of("platform", platform, "is none that the request allows: "
                    + String.join(", ", job.request().platforms().stream().sorted().toList())));
        }
        return Optional.empty();
    }

    private Optional<Misasking> throughputOfWorkload() {
        return job.request().require().work().isOfWorkload()
                ? asked.figures().stream().filter(Axis.THROUGHPUT.label()::equalsIgnoreCase).findFirst()
                .map(word -> Misasking.of("figure", word, "is not compared where the request has a workload; work is"))
                : Optional.empty();
    }

    private Optional<Misasking> withoutEnergy() {
        return over().contains(Cost.TOTAL) && !asked.over().isEmpty() && job.energy().isEmpty()
                ? Optional.of(new Misasking("over", Cost.TOTAL.label(), " needs to know about energy.",
                Optional.of(new Misasking.Way.GiveEnergy()))) : Optional.empty();
    }

    private Optional<Misasking> strangeShare() {
        return asked.together().isPresent() && !(asked.together().getAsDouble() >= 0 && asked.together().getAsDouble() <= MOST_SHARE)
                ? Optional.of(Misasking.of("together", String.valueOf(asked.together().getAsDouble()), "must be a share from 0 to 10,"
                        + " such as 0.2 for a fifth"))
                : Optional.empty();
    }
}
