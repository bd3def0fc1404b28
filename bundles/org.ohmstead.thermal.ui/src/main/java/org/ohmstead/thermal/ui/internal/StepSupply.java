// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.ui.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import org.ohmstead.model.Fuse;
import org.ohmstead.model.Project;
import org.ohmstead.model.Range;
import org.ohmstead.model.SupplyType;
import org.ohmstead.thermal.CableHeating;
import org.ohmstead.thermal.CableLead;
import org.ohmstead.thermal.FuseAnswer;
import org.ohmstead.thermal.FuseBank;
import org.ohmstead.thermal.FuseKind;
import org.ohmstead.thermal.SupplyAnswer;
import org.ohmstead.thermal.SupplyCurrent;
import org.ohmstead.thermal.SupplyDemand;
import org.ohmstead.thermal.SupplyFeed;
import org.ohmstead.thermal.SupplyNoSolution;
import org.ohmstead.thermal.SupplySource;
import org.ohmstead.thermal.SupplyWaveform;
import org.ohmstead.workbench.form.Refusals;

/** What a step asks of supply, cable and fuses, as lines of the calculator's table. */
final class StepSupply {
    static final String AVERAGE = "Supply current, average";
    static final String NEVER = "never";
    static final String NOT_IN_TABLE = "not listed";
    /** How the names of the lines begin that tell when the fuses open. */
    static final String OPEN = "Fuses open";

    /** The cable's warmth changes its resistance, which changes the current: so many rounds settle it far below a millikelvin. */
    private static final int ROUNDS = 6;

    private final StepQuestion question;
    private final StepPower power;
    private final Project project;
    private final List<FigureRow> rows = new ArrayList<>();
    private Optional<String> alert = Optional.empty();

    private StepSupply(StepQuestion question, StepPower power, Project project) {
        this.question = question;
        this.power = power;
        this.project = project;
    }

    /**
     * The lines, and what must be said before them.
     *
     * @param rows of the table
     * @param alert why the supply side cannot do it, with a remedy
     */
    record Lines(List<FigureRow> rows, Optional<String> alert) {
        Lines {
            rows = List.copyOf(rows);
        }
    }

    /** What a demand leads to once the cable is as warm as it gets. */
    private record Point(
            SupplyCurrent loud, SupplyCurrent quiet, SupplyCurrent all, double terminalVolts, Cable cable) {}

    /** The cable in the end. */
    private record Cable(double lossWatts, double celsius, double loopOhms) {}

    /** Returns the lines of a step, those of an unknown bench when no project is open. */
    static Lines of(StepQuestion question, StepPower power, Optional<Project> project) {
        if (project.isEmpty()) {
            Range amps = new Range(
                    power.inputWatts().low() / question.supplyVolts(),
                    power.inputWatts().high() / question.supplyVolts());
            return new Lines(
                    List.of(
                            HeatWords.row(AVERAGE, amps, "A", "at the volts entered"),
                            FigureRow.unknown(
                                    "Volts at the terminals", "Open a project: its supply and cable are needed."),
                            FigureRow.unknown("Fuses", "Open a project: its fuses are needed.")),
                    Optional.empty());
        }
        try {
            return new StepSupply(question, power, project.get()).lines();
        } catch (IllegalArgumentException refused) {
            return new Lines(
                    List.of(FigureRow.unknown(
                            AVERAGE,
                            "The cable cannot be as entered; check its cross-section on Bench and its outer diameter"
                                    + " on Heat and pacing. " + Refusals.sentence(refused))),
                    Optional.empty());
        }
    }

    private Lines lines() {
        List<Point> points = new ArrayList<>();
        for (int end = 0; end < 3; end++) {
            Optional<Point> point = point(share(end), end < 2 && smooth() ? SupplyWaveform.SMOOTH : roughest());
            if (point.isEmpty()) {
                current();
                rows.add(FigureRow.unknown("Volts at the terminals", alert.orElseThrow()));
                return new Lines(rows, alert);
            }
            points.add(point.get());
        }
        delivered(points);
        fuses(points);
        return new Lines(rows, alert);
    }

    private static double share(int end) {
        return end / 2.0;
    }

    private boolean smooth() {
        return project.amplifier().supplyType() != SupplyType.DIRECT;
    }

    private SupplyWaveform roughest() {
        SupplyType type = project.amplifier().supplyType();
        return type == SupplyType.DIRECT || type == SupplyType.UNKNOWN
                ? SupplyWaveform.RECTIFIED_SINE
                : SupplyWaveform.SMOOTH;
    }

    private SupplySource source() {
        return SupplySource.of(project.bench().supply(), project.heat().supply(), question.supplyVolts());
    }

    private CableLead lead() {
        return CableLead.of(project.bench().cable(), project.heat().supply());
    }

    /** Returns the point at a share of the way from the least to the most power; without one the reason is put down. */
    private Optional<Point> point(double share, SupplyWaveform waveform) {
        double loudWatts = at(power.loudInputWatts(), share);
        double quietWatts = quietWatts(share, loudWatts);
        SupplyFeed feed = new SupplyFeed(source(), lead());
        double celsius = question.airCelsius();
        Point point = null;
        for (int round = 0; round < ROUNDS; round++) {
            SupplyAnswer loud = feed.at(new SupplyDemand.ConstantPower(loudWatts), celsius);
            SupplyAnswer quiet = feed.at(new SupplyDemand.ConstantPower(quietWatts), celsius);
            if (!(loud instanceof SupplyAnswer.Delivered during)
                    || !(quiet instanceof SupplyAnswer.Delivered between)) {
                alert = Optional.of(reason(loud));
                return Optional.empty();
            }
            SupplyCurrent on = SupplyCurrent.of(during.amps(), waveform);
            SupplyCurrent off = SupplyCurrent.of(between.amps(), waveform);
            SupplyCurrent all = question.signal() == StepSignal.BURST
                    ? SupplyCurrent.bursts(on, off, question.burstOnSeconds(), question.burstPeriodSeconds())
                    : on;
            CableHeating heating = lead().settled(all.rmsAmps(), question.airCelsius());
            if (heating instanceof SupplyNoSolution none) {
                alert = Optional.of(none.reason() + " " + none.remedy());
                return Optional.empty();
            }
            CableHeating.Settled settled = (CableHeating.Settled) heating;
            celsius = settled.conductorCelsius();
            point = new Point(
                    on, off, all, during.terminalVolts(), new Cable(settled.lossWatts(), celsius, settled.loopOhms()));
        }
        return Optional.ofNullable(point);
    }

    private double quietWatts(double share, double loudWatts) {
        double duty = question.dutyRatio();
        return duty < 1 ? Math.max(0, (at(power.inputWatts(), share) - duty * loudWatts) / (1 - duty)) : loudWatts;
    }

    private static double at(Range range, double share) {
        return range.low() + share * (range.high() - range.low());
    }

    private static String reason(SupplyAnswer answer) {
        if (answer instanceof SupplyAnswer.InLimit limit) {
            return limit.reason() + " " + limit.remedy();
        }
        SupplyNoSolution none = (SupplyNoSolution) answer;
        return none.reason() + " " + none.remedy();
    }

    private void current() {
        double volts = question.supplyVolts();
        Range amps =
                new Range(power.inputWatts().low() / volts, power.inputWatts().high() / volts);
        rows.add(HeatWords.row(AVERAGE, amps, "A", "").caution("More than the supply side can give."));
    }

    private void delivered(List<Point> points) {
        double allowed = project.heat()
                        .supply()
                        .continuousAmps()
                        .orElse(project.bench().supply().currentLimitAmps())
                * (1 - project.heat().pacing().currentMarginRatio());
        FigureRow average = row(AVERAGE, points, point -> point.all().averageAmps(), "A", "");
        boolean tooMuch = points.get(2).all().averageAmps() > allowed;
        rows.add(
                tooMuch
                        ? average.caution("Above the " + HeatWords.number(allowed)
                                + " A that the supply gives continuously, less the margin.")
                        : average);
        rows.add(row(
                "Supply current, RMS",
                points,
                point -> point.all().rmsAmps(),
                "A",
                roughest() == SupplyWaveform.SMOOTH
                        ? ""
                        : smooth() ? "at most as a rectified sine" : "as a rectified sine"));
        if (question.signal() == StepSignal.BURST) {
            rows.add(row(
                    "Supply current in the burst", points, point -> point.loud().averageAmps(), "A", ""));
        }
        rows.add(row(
                question.signal() == StepSignal.BURST ? "Volts at the terminals, burst" : "Volts at the terminals",
                points,
                Point::terminalVolts,
                "V",
                "with the supply set to " + HeatWords.number(question.supplyVolts()) + " V"));
        rows.add(row(
                "Set the supply to",
                points,
                point -> setVolts(point, points),
                "V",
                "for " + HeatWords.number(question.supplyVolts()) + " V at the terminals"));
        rows.add(row("Cable loss", points, point -> point.cable().lossWatts(), "W", "by the RMS current, cable warm"));
        FigureRow cable = row(
                "Cable temperature in the end", points, point -> point.cable().celsius(), "\u00b0C", "");
        double limit = lead().limitCelsius();
        double margin = project.heat().pacing().marginKelvin();
        rows.add(
                points.get(2).cable().celsius() > limit - margin
                        ? cable.caution(
                                "Its insulation bears " + HeatWords.number(limit) + " \u00b0C, less the margin.")
                        : cable);
    }

    private double setVolts(Point point, List<Point> points) {
        double amps = at(power.loudInputWatts(), share(points.indexOf(point))) / question.supplyVolts();
        return question.supplyVolts()
                + amps * (source().sourceOhms() + point.cable().loopOhms());
    }

    private static FigureRow row(
            String name, List<Point> points, ToDoubleFunction<Point> figure, String unit, String remark) {
        double first = figure.applyAsDouble(points.get(0));
        double middle = figure.applyAsDouble(points.get(1));
        double last = figure.applyAsDouble(points.get(2));
        String between = HeatWords.range(new Range(Math.min(first, last), Math.max(first, last)));
        String value = HeatWords.figure(middle);
        return FigureRow.of(name, value, unit, between.equals(value) ? "" : between, remark);
    }

    private void fuses(List<Point> points) {
        List<Fuse> fuses = project.amplifier().fuses();
        if (fuses.isEmpty()) {
            rows.add(FigureRow.unknown("Fuses", "The amplifier lists none; add them on its page."));
            return;
        }
        Fuse first = fuses.get(0);
        boolean alike = fuses.stream()
                .allMatch(fuse ->
                        fuse.ratedAmps() == first.ratedAmps() && fuse.style().equals(first.style()));
        Optional<FuseKind> kind = FuseKind.of(first.style());
        if (!alike || kind.isEmpty()) {
            rows.add(FigureRow.unknown(
                    "Fuses",
                    alike
                            ? "There is no table for \"" + first.style()
                                    + "\"; the style must name a blade, large blade or" + " cartridge."
                            : "Fuses of different ratings or kinds side by side are not reckoned."));
            return;
        }
        FuseBank bank = new FuseBank(kind.get(), first.ratedAmps(), fuses.size());
        fuses(bank, answer(bank, points.get(0)), answer(bank, points.get(2)));
    }

    private FuseAnswer answer(FuseBank bank, Point point) {
        return question.signal() == StepSignal.BURST
                ? bank.bursts(
                        point.loud().rmsAmps(),
                        point.quiet().rmsAmps(),
                        question.burstOnSeconds(),
                        question.burstPeriodSeconds())
                : bank.steady(point.all().rmsAmps());
    }

    private void fuses(FuseBank bank, FuseAnswer least, FuseAnswer most) {
        String name = "Fuses, " + bank.count() + " \u00d7 " + HeatWords.number(bank.ratedAmps()) + " A";
        if (most instanceof SupplyNoSolution none) {
            rows.add(FigureRow.unknown(name, none.reason() + " " + none.remedy()));
            return;
        }
        Range ratio = new Range(Math.min(ratio(least), ratio(most)), ratio(most));
        FigureRow share = HeatWords.row(
                name,
                new Range(100 * ratio.low(), 100 * ratio.high()),
                "%",
                bank.count() > 1 ? "of their rating, shared alike" : "of its rating");
        if (most instanceof FuseAnswer.AboveContinuous above) {
            rows.add(share.caution(above.reason()));
            rows.add(FigureRow.of(OPEN, NOT_IN_TABLE, "", "", above.remedy()));
        } else if (most instanceof FuseAnswer.Opens opens) {
            rows.add(share);
            rows.add(opening(opens));
        } else {
            rows.add(share);
            rows.add(FigureRow.of(OPEN, NEVER, "", "", FuseBank.CONTINUOUS_RULE));
        }
    }

    private static double ratio(FuseAnswer answer) {
        if (answer instanceof FuseAnswer.Carries carries) {
            return carries.currentRatio();
        }
        return answer instanceof FuseAnswer.AboveContinuous above
                ? above.currentRatio()
                : answer instanceof FuseAnswer.Opens opens ? opens.currentRatio() : 0;
    }

    private FigureRow opening(FuseAnswer.Opens opens) {
        double from = opens.earliestSeconds().orElse(0);
        String latest = opens.latestSeconds().isPresent()
                ? HeatWords.timeFigure(opens.latestSeconds().getAsDouble())
                : NEVER;
        FigureRow row = FigureRow.of(
                opens.withinBurst() ? OPEN + " in a burst after" : OPEN + " after",
                HeatWords.timeNumber(from),
                HeatWords.timeUnit(from),
                HeatWords.timeFigure(from) + " \u2013 " + latest,
                opens.citation());
        boolean inTime = from <= question.seconds();
        return inTime ? row.caution("Within this step. " + opens.citation()) : row;
    }
}
