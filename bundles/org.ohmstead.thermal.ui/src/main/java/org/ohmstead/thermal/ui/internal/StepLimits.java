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
import org.ohmstead.units.text.Messages;

/** What the limits of case and junctions allow a step, as lines of the calculator's table. */
final class StepLimits {
    private static final Messages TEXTS = Messages.of(StepLimits.class);
    private static final double COOLED_KELVIN = 5;
    private static final int LEVELS = 100;
    private static final int HALVINGS = 40;
    private static final double LONGEST_PERIODS = 1e5;
    private static final double ENOUGH_RATIO = 1 - 1e-9;

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
            rows.add(FigureRow.unknown(TEXTS.text("limits.onTime"), TEXTS.text("limits.noLimit")));
            rows.add(
                    timed
                            ? cooling()
                            : FigureRow.unknown(TEXTS.text("limits.cooling"), TEXTS.text("limits.noCapacity")));
            return rows;
        }
        rows.add(onTime(timed));
        rows.add(timed ? cooling() : FigureRow.unknown(TEXTS.text("limits.cooling"), TEXTS.text("limits.noCapacity")));
        rows.add(timed ? duty() : FigureRow.unknown(TEXTS.text("limits.duty"), TEXTS.text("limits.noCapacity")));
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
            return FigureRow.unknown(TEXTS.text("limits.onTime"), TEXTS.text("limits.notWithoutEnd"));
        }
        FigureRow row =
                timed(TEXTS.text("limits.onTime"), middle, answer(1), answer(0)).about(FigureRow.Topic.ON_TIME);
        boolean tooLong = answer(1) instanceof HeatAnswer.Bounded least && least.figure() < question.seconds();
        return tooLong ? row.caution(TEXTS.text("limits.tooLong", row.remark())) : row;
    }

    private HeatAnswer answer(double warmth) {
        HeatLimits limits = limits(warmth);
        return limits.onTime(body.at(warmth).cold(), watts(warmth));
    }

    private static FigureRow timed(String name, HeatAnswer middle, HeatAnswer least, HeatAnswer most) {
        if (middle instanceof HeatAnswer.Impossible none) {
            return FigureRow.of(name, TEXTS.text("limits.none"), "", "", none.sentence() + " " + none.remedy())
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
                : FigureRow.of(name, TEXTS.text("limits.unlimited"), "", between, middle.sentence());
    }

    private static String words(HeatAnswer answer) {
        if (answer instanceof HeatAnswer.Bounded bounded) {
            return HeatWords.timeFigure(bounded.figure());
        }
        return answer instanceof HeatAnswer.Unlimited ? TEXTS.text("limits.unlimited") : TEXTS.text("limits.none");
    }

    private FigureRow cooling() {
        HeatAnswer middle = cooled(0.5, 0.5);
        if (middle instanceof HeatAnswer.Bounded bounded && bounded.figure() == 0) {
            return FigureRow.of(TEXTS.text("limits.cooling"), "0", "s", "", TEXTS.text("limits.littleHeat"));
        }
        return timed(TEXTS.text("limits.cooling"), middle, cooled(0, 0), cooled(1, 1));
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
            return FigureRow.of(TEXTS.text("limits.duty"), TEXTS.text("limits.none"), "", "", "")
                    .caution(TEXTS.text("limits.stepTooLong", HeatWords.time(question.seconds())));
        }
        String low = least.map(StepLimits::percent).orElse(TEXTS.text("limits.none"));
        String high = most.map(StepLimits::percent).orElse(TEXTS.text("limits.none"));
        double rest = question.seconds() / middle.get() - question.seconds();
        return FigureRow.of(
                TEXTS.text("limits.duty"),
                percent(middle.get()),
                "%",
                low.equals(high) ? "" : low + " \u2013 " + high,
                middle.get() >= 1
                        ? TEXTS.text("limits.noRest")
                        : TEXTS.text("limits.onThenRest", HeatWords.time(question.seconds()), HeatWords.time(rest)));
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
        String name = TEXTS.text("limits.heat");
        HeatAnswer answer = limits(0.5).continuousMultiple(watts(0.5), new double[] {0, 0});
        if (answer instanceof HeatAnswer.Impossible none) {
            return FigureRow.of(name, TEXTS.text("limits.none"), "", "", "")
                    .caution(none.sentence() + " " + none.remedy());
        }
        Optional<Double> middle = carried(0.5);
        if (middle.isEmpty()) {
            return FigureRow.of(name, TEXTS.text("limits.unlimited"), "", "", answer.sentence());
        }
        Range range = new Range(carried(1).orElse(0.0), carried(0).orElse(middle.get()));
        String between = HeatWords.range(range);
        return FigureRow.of(
                name,
                HeatWords.figure(middle.get()),
                "W",
                between.equals(HeatWords.figure(middle.get())) ? "" : between,
                TEXTS.text("limits.heat.remark"));
    }

    private Optional<Double> carried(double warmth) {
        double[] watts = watts(warmth);
        HeatAnswer answer = limits(warmth).continuousMultiple(watts, new double[] {0, 0});
        return answer instanceof HeatAnswer.Bounded bounded
                ? Optional.of(bounded.figure() * watts[0])
                : Optional.empty();
    }

    private FigureRow continuous() {
        String name = TEXTS.text("limits.power");
        double most = 2 * question.powerWatts();
        Optional<Double> middle = bearableWatts(0.5, most);
        if (middle.isEmpty()) {
            return FigureRow.of(name, TEXTS.text("limits.none"), "", "", "")
                    .caution(TEXTS.text("limits.power.tooMuch"));
        }
        String low = upTo(bearableWatts(1, most).orElse(0.0), most);
        String high = upTo(bearableWatts(0, most).orElse(middle.get()), most);
        String value = upTo(middle.get(), most);
        return FigureRow.of(
                name, value, "W", low.equals(high) ? "" : low + " \u2013 " + high, TEXTS.text("limits.power.remark"));
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
