// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.ui.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.ohmstead.model.Project;
import org.ohmstead.model.Range;
import org.ohmstead.thermal.BurstTrain;
import org.ohmstead.thermal.HeatAnswer;
import org.ohmstead.thermal.HeatLimits;
import org.ohmstead.thermal.HeatModel;

/** What the limits of case and junctions allow a step, as lines of the calculator's table. */
final class StepLimits {
    private static final double COOLED_KELVIN = 5;
    private static final int LEVELS = 100;
    private static final int HALVINGS = 40;
    private static final double LONGEST_PERIODS = 1e5;
    private static final double ENOUGH_RATIO = 1 - 1e-9;
    static final String ON_TIME = "Maximum on-time, from cold";
    private static final String COOLING = "Cool-down to air + 5 K, off";
    private static final String DUTY = "Duty without end";
    private static final String NO_CAPACITY =
            "The case's heat capacity is not known; enter it on Heat and pacing, or find it from a logged warm-up.";

    private final StepQuestion question;
    private final Project project;
    private final WarmBody body;
    private final StepPower power;
    private final double marginKelvin;

    StepLimits(StepQuestion question, Project project, WarmBody body, StepPower power) {
        this.question = question;
        this.project = project;
        this.body = body;
        this.power = power;
        marginKelvin = project.heat().pacing().marginKelvin();
    }

    /** Returns the lines; without any limit they say so. */
    List<FigureRow> rows() {
        List<FigureRow> rows = new ArrayList<>();
        boolean timed = body.caseJoulesPerKelvin().isPresent();
        boolean junctions = body.deviceLimitCelsius().isPresent()
                && body.deviceKelvinPerWatt().isPresent();
        if (body.caseLimitCelsius().isEmpty() && !junctions) {
            rows.add(FigureRow.unknown(ON_TIME, "No limit is known; enter that of the case on Heat and pacing."));
            rows.add(timed ? cooling() : FigureRow.unknown(COOLING, NO_CAPACITY));
            return rows;
        }
        rows.add(onTime(timed));
        rows.add(timed ? cooling() : FigureRow.unknown(COOLING, NO_CAPACITY));
        rows.add(timed ? duty() : FigureRow.unknown(DUTY, NO_CAPACITY));
        rows.add(heat());
        rows.add(continuous());
        return rows;
    }

    private HeatLimits limits(double warmth) {
        return new HeatLimits(body.at(warmth), question.airCelsius(), marginKelvin);
    }

    /** Returns the power of both sources: from the least for 0 to the most for 1; junctions go by the loud part. */
    double[] watts(double warmth) {
        return watts(power, warmth);
    }

    static double[] watts(StepPower power, double warmth) {
        Range stages = power.loudStageWatts().orElse(power.loudHeatWatts());
        return new double[] {WarmBody.part(power.heatWatts(), warmth), WarmBody.part(stages, warmth)};
    }

    private double[] restWatts(double warmth) {
        return new double[] {
            WarmBody.part(project.heat().amplifier().idleWatts().orElse(Range.of(0)), warmth), 0
        };
    }

    private FigureRow onTime(boolean timed) {
        HeatAnswer middle = answer(0.5);
        if (!timed && middle instanceof HeatAnswer.Bounded) {
            return FigureRow.unknown(ON_TIME, "Not without end, and " + lower(NO_CAPACITY));
        }
        FigureRow row = timed(ON_TIME, middle, answer(1), answer(0));
        boolean tooLong = answer(1) instanceof HeatAnswer.Bounded least && least.figure() < question.seconds();
        return tooLong ? row.caution("This step is longer than it may be on at the worst. " + row.remark()) : row;
    }

    private HeatAnswer answer(double warmth) {
        HeatLimits limits = limits(warmth);
        return limits.onTime(body.at(warmth).cold(), watts(warmth));
    }

    private static String lower(String sentence) {
        return Character.toLowerCase(sentence.charAt(0)) + sentence.substring(1);
    }

    private static FigureRow timed(String name, HeatAnswer middle, HeatAnswer least, HeatAnswer most) {
        if (middle instanceof HeatAnswer.Impossible none) {
            return FigureRow.of(name, "none", "", "", none.sentence() + " " + none.remedy())
                    .caution(none.sentence() + " " + none.remedy());
        }
        String low = words(least);
        String high = words(most);
        String between = low.equals(high) ? "" : low + " \u2013 " + high;
        return middle instanceof HeatAnswer.Bounded bounded
                ? FigureRow.of(
                        name,
                        HeatWords.timeNumber(bounded.figure()),
                        HeatWords.timeUnit(bounded.figure()),
                        between,
                        bounded.sentence())
                : FigureRow.of(name, "unlimited", "", between, middle.sentence());
    }

    private static String words(HeatAnswer answer) {
        if (answer instanceof HeatAnswer.Bounded bounded) {
            return HeatWords.timeFigure(bounded.figure());
        }
        return answer instanceof HeatAnswer.Unlimited ? "unlimited" : "none";
    }

    private FigureRow cooling() {
        HeatAnswer middle = cooled(0.5, 0.5);
        if (middle instanceof HeatAnswer.Bounded bounded && bounded.figure() == 0) {
            return FigureRow.of(COOLING, "0", "s", "", "The step warms the case by less than 5 K.");
        }
        return timed(COOLING, middle, cooled(0, 0), cooled(1, 1));
    }

    /** A large capacity warms less but cools slower; the band takes the sides one after the other. */
    private HeatAnswer cooled(double warmth, double slowness) {
        HeatModel warming = body.at(warmth);
        double[] state = warming.cold();
        warming.advance(state, watts(warmth), question.seconds());
        Range capacity = body.caseJoulesPerKelvin().orElseThrow();
        HeatModel cooling = body.model(
                WarmBody.part(body.caseKelvinPerWatt(), warmth),
                WarmBody.part(capacity, slowness),
                WarmBody.part(body.deviceKelvinPerWatt().orElse(Range.of(0)), warmth));
        return new HeatLimits(cooling, question.airCelsius(), 0)
                .coolDown(WarmBody.CASE, state, new double[] {0, 0}, question.airCelsius() + COOLED_KELVIN);
    }

    private FigureRow duty() {
        Optional<Double> middle = duty(0.5);
        Optional<Double> least = duty(1);
        Optional<Double> most = duty(0);
        if (middle.isEmpty()) {
            return FigureRow.of(DUTY, "none", "", "", "")
                    .caution("A step of " + HeatWords.time(question.seconds()) + " is too long however long the rest.");
        }
        String low = least.map(StepLimits::percent).orElse("none");
        String high = most.map(StepLimits::percent).orElse("none");
        double rest = question.seconds() / middle.get() - question.seconds();
        return FigureRow.of(
                DUTY,
                percent(middle.get()),
                "%",
                low.equals(high) ? "" : low + " \u2013 " + high,
                middle.get() >= 1
                        ? "No rest is needed."
                        : HeatWords.time(question.seconds()) + " on, then " + HeatWords.time(rest)
                                + " of rest, again and again");
    }

    private static String percent(double ratio) {
        return HeatWords.figure(100 * ratio);
    }

    /** Returns the greatest part of the time that steps of this length may take for ever; empty when none may come at all. */
    private Optional<Double> duty(double warmth) {
        double on = question.seconds();
        double low = 1;
        double high = LONGEST_PERIODS;
        if (bearable(warmth, on * low)) {
            return Optional.of(1.0);
        }
        if (!bearable(warmth, on * high)) {
            return Optional.empty();
        }
        for (int i = 0; i < HALVINGS; i++) {
            double middle = Math.sqrt(low * high);
            if (bearable(warmth, on * middle)) {
                high = middle;
            } else {
                low = middle;
            }
        }
        return Optional.of(1 / high);
    }

    private boolean bearable(double warmth, double periodSeconds) {
        HeatModel model = body.at(warmth);
        double on = question.seconds();
        BurstTrain train = new BurstTrain(watts(warmth), on, restWatts(warmth), Math.max(0, periodSeconds - on));
        for (int point = 0; point < model.points().size(); point++) {
            double allowed = model.points().get(point).limitCelsius().orElse(Double.POSITIVE_INFINITY)
                    - marginKelvin
                    - question.airCelsius();
            if (train.settledPeak(model, point).riseKelvin() > allowed) {
                return false;
            }
        }
        return true;
    }

    private FigureRow heat() {
        String name = "Heat carried off for ever";
        HeatAnswer answer = limits(0.5).continuousMultiple(watts(0.5), new double[] {0, 0});
        if (answer instanceof HeatAnswer.Impossible none) {
            return FigureRow.of(name, "none", "", "", "").caution(none.sentence() + " " + none.remedy());
        }
        Optional<Double> middle = carried(0.5);
        if (middle.isEmpty()) {
            return FigureRow.of(name, "unlimited", "", "", answer.sentence());
        }
        Range range = new Range(carried(1).orElse(0.0), carried(0).orElse(middle.get()));
        String between = HeatWords.range(range);
        return FigureRow.of(
                name,
                HeatWords.figure(middle.get()),
                "W",
                between.equals(HeatWords.figure(middle.get())) ? "" : between,
                "before a limit, less the margin, is reached");
    }

    private Optional<Double> carried(double warmth) {
        double[] watts = watts(warmth);
        HeatAnswer answer = limits(warmth).continuousMultiple(watts, new double[] {0, 0});
        return answer instanceof HeatAnswer.Bounded bounded
                ? Optional.of(bounded.figure() * watts[0])
                : Optional.empty();
    }

    private FigureRow continuous() {
        String name = "Power per output for ever";
        double most = 2 * question.powerWatts();
        Optional<Double> middle = bearableWatts(0.5, most);
        if (middle.isEmpty()) {
            return FigureRow.of(name, "none", "", "", "").caution("Already the air or the idle power is too much.");
        }
        String low = upTo(bearableWatts(1, most).orElse(0.0), most);
        String high = upTo(bearableWatts(0, most).orElse(middle.get()), most);
        String value = upTo(middle.get(), most);
        return FigureRow.of(
                name,
                value,
                "W",
                low.equals(high) ? "" : low + " \u2013 " + high,
                "up to which every level may stay on");
    }

    private static String upTo(double watts, double most) {
        return watts >= most * ENOUGH_RATIO ? "> " + HeatWords.number(most) : HeatWords.figure(watts);
    }

    /** Returns the power up to which every level settles below the limits, at most a given one. Class AB is hottest below full power. */
    private Optional<Double> bearableWatts(double warmth, double most) {
        double good = 0;
        for (int level = 1; level <= LEVELS; level++) {
            double watts = most * level / LEVELS;
            if (!settles(warmth, watts)) {
                return level == 1 && !settles(warmth, most / LEVELS / LEVELS)
                        ? Optional.empty()
                        : Optional.of(between(warmth, good, watts));
            }
            good = watts;
        }
        return Optional.of(most);
    }

    private double between(double warmth, double good, double bad) {
        double low = good;
        double high = bad;
        for (int i = 0; i < HALVINGS / 2; i++) {
            double middle = (low + high) / 2;
            if (middle > 0 && settles(warmth, middle)) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return low;
    }

    private boolean settles(double warmth, double powerWatts) {
        StepPower at = StepPower.of(question.withPowerWatts(powerWatts), Optional.of(project));
        HeatModel model = body.at(warmth);
        double[] watts = watts(at, warmth);
        for (int point = 0; point < model.points().size(); point++) {
            double allowed = model.points().get(point).limitCelsius().orElse(Double.POSITIVE_INFINITY) - marginKelvin;
            if (model.settledCelsius(point, watts, question.airCelsius()) > allowed) {
                return false;
            }
        }
        return true;
    }
}
