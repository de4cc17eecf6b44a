package evenfall.bench.choose;

import evenfall.outlet.OutletType;
import evenfall.pattern.HeightWindow;
import evenfall.quantity.FixedDecimals;
import evenfall.quantity.Units;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** The answer in sentences, in the units that people read; the terminal and the page say the same. */
final class Words {
    /** How a criterion speaks for a type. */
    enum Mark {
        FOR("+"),
        EVEN("·"),
        AGAINST("-");

        private final String sign;

        Mark(String sign) {
            this.sign = sign;
        }

        String sign() {
            return sign;
        }
    }

    record Reason(Mark mark, String text) {}

    private static final double LITTLE_SHARE = 0.01;

    private final Choice choice;
    private final Job job;
    private final Units units;

    Words(Choice choice, Units units) {
        this.choice = choice;
        this.job = choice.job();
        this.units = units;
    }

    /** What was asked, in two lines. */
    List<String> question() {
        String pressures = job.pressuresPa() == null
                ? "each outlet's own pressures"
                : pressures(job.pressuresPa()) + " at the outlets";
        return List.of(
                rates(job.ratesM()) + " at " + speeds(job.speedsMps()) + ", " + pressures,
                job.product().title() + " (SG " + FixedDecimals.text(job.specificGravity(), 2) + "), " + job.outlets()
                        + " outlets every " + units.spacing(job.spacingM()) + ", rows every "
                        + units.spacing(job.rowM()) + ", boom at " + units.length(job.heightM()) + " "
                        + wander());
    }

    private String wander() {
        String much = units.length(job.wander().metres());
        if (job.wander().metres() == 0) {
            return "and steady";
        }
        return job.wander().kind() == Wander.Kind.WITHIN
                ? "± " + much
                : "wandering by " + much + " (standard deviation)";
    }

    /** The answer in one sentence or two. */
    String verdict() {
        Choice.Ranked first = choice.ranked().get(0);
        Cover cover = first.candidate().cover();
        if (cover == null) {
            return "No outlet type reaches all of it. " + sentence(shortfall(first.candidate()));
        }
        String text = first.candidate().type().title() + ": " + sets(first.candidate(), cover) + " with "
                + sizesInWords(cover) + " " + units.flowUnit() + " for all of it, at "
                + pressures(cover.pressuresPa()) + ".";
        Evenness evenness = first.candidate().evenness();
        return evenness == null ? text : text + " " + sentence(tolerance(evenness));
    }

    String sets(Candidate candidate, Cover cover) {
        String word = candidate.bar() ? "set of bars" : "set";
        return cover.sets() == 1 ? "one " + word : cover.sets() + " " + word.replace("set", "sets");
    }

    /** Sizes of a cover as bare numbers; sets parted by a bar. */
    String sizes(Cover cover) {
        StringBuilder text = new StringBuilder();
        int set = 0;
        for (Cover.Step step : cover.steps()) {
            text.append(set == 0 ? "" : step.set() == set ? ", " : " | ").append(units.flowNumber(step.sizeM3ps()));
            set = step.set();
        }
        return text.toString();
    }

    private String sizesInWords(Cover cover) {
        List<Cover.Step> steps = cover.steps();
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < steps.size(); i++) {
            text.append(i == 0 ? "" : i == steps.size() - 1 ? " and " : ", ")
                    .append(units.flowNumber(steps.get(i).sizeM3ps()));
        }
        return text.toString();
    }

    List<Reason> reasons(Choice.Ranked one) {
        List<Reason> reasons = new ArrayList<>();
        Candidate candidate = one.candidate();
        Cover cover = candidate.cover();
        if (cover == null) {
            reasons.add(new Reason(Mark.AGAINST, shortfall(candidate)));
            if (!candidate.reaches().isEmpty()) {
                reasons.add(new Reason(Mark.EVEN, bestAlone(candidate)));
            }
            if (candidate.evenness() != null) {
                reasons.add(new Reason(Mark.EVEN, tolerance(candidate.evenness())));
            }
            return reasons;
        }
        for (Criterion criterion : Criterion.values()) {
            String text = because(criterion, candidate, cover);
            reasons.add(new Reason(
                    mark(criterion, one), choice.weights().of(criterion) == 0 ? text + " (not weighed)" : text));
        }
        reasons.sort((a, b) -> a.mark().compareTo(b.mark()));
        return reasons;
    }

    private static Mark mark(Criterion criterion, Choice.Ranked one) {
        if (one.best().contains(criterion)) {
            return Mark.FOR;
        }
        return one.worst().contains(criterion) ? Mark.AGAINST : Mark.EVEN;
    }

    private String because(Criterion criterion, Candidate candidate, Cover cover) {
        return switch (criterion) {
            case COST -> cost(candidate.cost());
            case TOLERANCE ->
                candidate.evenness() == null ? "tolerance to height not known" : tolerance(candidate.evenness());
            case SETS -> reach(candidate, cover);
            case CONTACT -> contact(candidate);
            case HANDLING ->
                candidate.bar()
                        ? "bars are bulky in folding and in the cradle, break on fences, and twist"
                        : "small: nothing more to mind in folding";
        };
    }

    private String reach(Candidate candidate, Cover cover) {
        if (cover.sets() > 1) {
            return sets(candidate, cover) + " needed: outlets must be changed within the range";
        }
        int sizes = cover.steps().size();
        if (sizes == 1) {
            return sets(candidate, cover) + " reaches all of it, with one size";
        }
        return sets(candidate, cover) + " reaches all of it, with " + sizes + " sizes turned or opened by hand";
    }

    String tolerance(Evenness evenness) {
        String limit = Units.percent(job.limitCv());
        String share = Units.percent(evenness.withinShare());
        HeightWindow window = evenness.window();
        if (window == null) {
            return "rows do not keep a CV of " + limit + " at the set height; they do at " + share
                    + " of the heights the boom visits";
        }
        if (evenness.withinShare() > 0.9995) {
            return "rows keep a CV of " + limit + " at every height the boom visits (" + heights(window) + " holds)";
        }
        return "rows keep a CV of " + limit + " at " + share + " of the heights the boom visits (" + heights(window)
                + " holds)";
    }

    /** The heights of a window with their unit. */
    String heights(@Nullable HeightWindow window) {
        String numbers = heightNumbers(window);
        return window == null || window.isOpen() ? numbers : numbers + " " + units.lengthUnit();
    }

    /** The same as bare numbers. */
    String heightNumbers(@Nullable HeightWindow window) {
        if (window == null) {
            return "none";
        }
        if (window.isOpen()) {
            return "any height";
        }
        if (window.highM() >= HeightWindow.TALLEST_M) {
            return "above " + units.lengthNumber(window.lowM());
        }
        return units.lengthNumber(window.lowM()) + " to " + units.lengthNumber(window.highM());
    }

    private String contact(Candidate candidate) {
        String times = contactTimes(candidate);
        if (times.equals("-")) {
            return "leaf contact not known";
        }
        return times.equals("1.0") ? "least leaf contact" : times + " times the least leaf contact";
    }

    /** Leaf contact over the least of all types, one decimal; a dash where not known. */
    String contactTimes(Candidate candidate) {
        Double least = choice.leastContactMpM();
        return candidate.contact() == null || least == null
                ? "-"
                : FixedDecimals.text(candidate.contact().wettedMpM() / least, 1);
    }

    String cost(Cost cost) {
        Double amount = cost.amount();
        return amount == null
                ? "cost unknown: " + cost.why()
                : "costs " + money(cost, amount) + (cost.note() == null ? "" : " (" + cost.note() + ")");
    }

    /** For a column: the amount, or that it is not known. */
    String costCell(Cost cost) {
        Double amount = cost.amount();
        return amount == null ? "unknown" : money(cost, amount);
    }

    private static String money(Cost cost, double amount) {
        return thousands(FixedDecimals.text(amount, 0)) + " " + cost.currency();
    }

    private static String thousands(String digits) {
        StringBuilder text = new StringBuilder(digits);
        for (int at = text.length() - 3; at > 0; at -= 3) {
            text.insert(at, ',');
        }
        return text.toString();
    }

    String shortfall(Candidate candidate) {
        Candidate.Shortfall why = candidate.shortfall();
        if (why == null) {
            return "";
        }
        OutletType type = candidate.type();
        String reaches = ": " + share(candidate.reachedShare()) + " of the range is reached";
        return switch (why) {
            case NO_PRESSURE ->
                "it works at " + pressures(new Span(type.lowPa(), type.highPa()))
                        + ", which the pressures asked for do not meet";
            case TOO_LITTLE_ASKED ->
                "the lowest rate at the lowest speed takes less than the smallest size gives" + reaches;
            case TOO_MUCH_ASKED ->
                "the highest rate at the highest speed takes more than the largest size gives" + reaches;
            case GAPS -> "the pressure window is so narrow that sizes leave gaps between them" + reaches;
        };
    }

    /** Sizes that reach enough of the range to be worth a line, rising. */
    List<Reach> worthSaying(Candidate candidate) {
        return candidate.reaches().stream()
                .filter(reach -> reach.share() >= LITTLE_SHARE)
                .toList();
    }

    /** What each size reaches alone. */
    String alone(Candidate candidate) {
        List<String> parts = new ArrayList<>();
        for (Reach reach : worthSaying(candidate)) {
            parts.add(units.flowNumber(reach.sizeM3ps()) + " → " + share(reach.share()));
        }
        return "each size alone: " + String.join(", ", parts) + " of the range";
    }

    private String bestAlone(Candidate candidate) {
        Reach best = candidate.reaches().get(0);
        for (Reach reach : candidate.reaches()) {
            best = reach.share() > best.share() ? reach : best;
        }
        return "the best single size, " + units.flow(best.sizeM3ps()) + ", reaches " + share(best.share())
                + " of the range";
    }

    /** A share in percent; what is not all is not rounded to all, nor what is something to nothing. */
    static String share(double share) {
        return share >= 1 ? "100 %" : share < LITTLE_SHARE ? "under 1 %" : Units.percent(Math.min(share, 0.99));
    }

    /** Where one size ends and the next begins. */
    String changeover(Cover cover, int index) {
        Cover.Changeover change = cover.changeovers().get(index);
        String from = units.flowNumber(cover.steps().get(index).sizeM3ps());
        String to = units.flow(cover.steps().get(index + 1).sizeM3ps());
        List<String> places = new ArrayList<>();
        double lastMps = Double.NaN;
        for (double speedMps :
                new double[] {job.speedsMps().low(), job.speedsMps().high()}) {
            Double rateM = change.rateM(job, speedMps);
            if (rateM != null && speedMps != lastMps) {
                places.add(units.rate(rateM) + " at " + units.speed(speedMps));
            }
            lastMps = speedMps;
        }
        double lastM = Double.NaN;
        for (double rateM : new double[] {job.ratesM().low(), job.ratesM().high()}) {
            Double speedMps = change.speedMps(job, rateM);
            if (speedMps != null && rateM != lastM) {
                places.add(units.speed(speedMps) + " at " + units.rate(rateM));
            }
            lastM = rateM;
        }
        if (places.isEmpty()) {
            // Only where rounding puts the changeover just outside a corner.
            places.add(units.flow(change.flowM3ps()) + " an outlet");
        }
        String how = change.newSet() ? "change outlets" : "turn or open the bars";
        return from + " to " + to + ": " + how + " at " + String.join(", or ", places);
    }

    /** Why criteria were left out; null where none was. */
    @Nullable
    String leftOut() {
        if (choice.leftOut().isEmpty()) {
            return null;
        }
        List<String> words = new ArrayList<>();
        for (Criterion criterion : choice.leftOut()) {
            words.add(criterion.word());
        }
        return "Left out of the score, since it is not known of every type: " + String.join(", ", words) + ".";
    }

    String weights() {
        List<String> words = new ArrayList<>();
        for (Criterion criterion : Criterion.values()) {
            words.add(criterion.word() + " " + plain(choice.weights().of(criterion)));
        }
        return "Weights: " + String.join(", ", words) + ".";
    }

    String factors() {
        BurnFactors factors = choice.factors();
        String weather = factors.weather() == null ? "unknown" : FixedDecimals.text(factors.weather(), 1);
        return "Product factor " + FixedDecimals.text(factors.product(), 1) + " (" + factors.productWhy()
                + "), weather factor " + weather + " (" + factors.weatherWhy()
                + "): the same for every type, their size a choice of ours.";
    }

    String rates(Span ratesM) {
        return span(units.rateNumber(ratesM.low()), units.rateNumber(ratesM.high())) + " " + units.rateUnit();
    }

    String speeds(Span speedsMps) {
        return span(units.speedNumber(speedsMps.low()), units.speedNumber(speedsMps.high())) + " " + units.speedUnit();
    }

    String pressures(Span pressuresPa) {
        return span(units.pressureNumber(pressuresPa.low()), units.pressureNumber(pressuresPa.high())) + " "
                + units.pressureUnit();
    }

    static String span(String low, String high) {
        return low.equals(high) ? low : low + " to " + high;
    }

    private static String plain(double weight) {
        String text = FixedDecimals.text(weight, 2);
        return text.replaceAll("0+$", "").replaceAll("\\.$", "");
    }

    static String sentence(String halfSentence) {
        return halfSentence.substring(0, 1).toUpperCase(Locale.ROOT) + halfSentence.substring(1) + ".";
    }
}
