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
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.form.Refusals;

/** What a step asks of supply, cable and fuses, as lines of the calculator's table. */
final class StepSupply {
    private static final Messages TEXTS = Messages.of(StepSupply.class);

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
                            HeatWords.row(TEXTS.text("supply.average"), amps, "A", TEXTS.text("supply.atEntered"))
                                    .about(FigureRow.Topic.SUPPLY_AMPS),
                            FigureRow.unknown(TEXTS.text("supply.terminals"), TEXTS.text("supply.noProject")),
                            FigureRow.unknown(TEXTS.text("supply.fuses"), TEXTS.text("supply.noProject.fuses"))),
                    Optional.empty());
        }
        try {
            return new StepSupply(question, power, project.get()).lines();
        } catch (IllegalArgumentException refused) {
            return new Lines(
                    List.of(FigureRow.unknown(
                            TEXTS.text("supply.average"),
                            TEXTS.text("supply.cableRefused", Refusals.sentence(refused)))),
                    Optional.empty());
        }
    }

    private Lines lines() {
        List<Point> points = new ArrayList<>();
        for (int end = 0; end < 3; end++) {
            Optional<Point> point = point(share(end), end < 2 && smooth() ? SupplyWaveform.SMOOTH : roughest());
            if (point.isEmpty()) {
                current();
                rows.add(FigureRow.unknown(TEXTS.text("supply.terminals"), alert.orElseThrow()));
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
        rows.add(HeatWords.row(TEXTS.text("supply.average"), amps, "A", "")
                .about(FigureRow.Topic.SUPPLY_AMPS)
                .caution(TEXTS.text("supply.tooMuch")));
    }

    private void delivered(List<Point> points) {
        double allowed = project.heat()
                        .supply()
                        .continuousAmps()
                        .orElse(project.bench().supply().currentLimitAmps())
                * (1 - project.heat().pacing().currentMarginRatio());
        FigureRow average = row(
                        TEXTS.text("supply.average"),
                        points,
                        point -> point.all().averageAmps(),
                        "A",
                        "")
                .about(FigureRow.Topic.SUPPLY_AMPS);
        boolean tooMuch = points.get(2).all().averageAmps() > allowed;
        rows.add(tooMuch ? average.caution(TEXTS.text("supply.aboveContinuous", HeatWords.number(allowed))) : average);
        rows.add(row(
                TEXTS.text("supply.rms"),
                points,
                point -> point.all().rmsAmps(),
                "A",
                roughest() == SupplyWaveform.SMOOTH
                        ? ""
                        : smooth() ? TEXTS.text("supply.rms.most") : TEXTS.text("supply.rms.as")));
        if (question.signal() == StepSignal.BURST) {
            rows.add(row(
                    TEXTS.text("supply.burst"), points, point -> point.loud().averageAmps(), "A", ""));
        }
        rows.add(row(
                question.signal() == StepSignal.BURST
                        ? TEXTS.text("supply.terminals.burst")
                        : TEXTS.text("supply.terminals"),
                points,
                Point::terminalVolts,
                "V",
                TEXTS.text("supply.setTo", HeatWords.number(question.supplyVolts()))));
        rows.add(row(
                TEXTS.text("supply.set"),
                points,
                point -> setVolts(point, points),
                "V",
                TEXTS.text("supply.set.for", HeatWords.number(question.supplyVolts()))));
        rows.add(row(
                TEXTS.text("supply.cableLoss"),
                points,
                point -> point.cable().lossWatts(),
                "W",
                TEXTS.text("supply.cableLoss.remark")));
        FigureRow cable = row(
                TEXTS.text("supply.cableTemperature"),
                points,
                point -> point.cable().celsius(),
                "\u00b0C",
                "");
        double limit = lead().limitCelsius();
        double margin = project.heat().pacing().marginKelvin();
        rows.add(
                points.get(2).cable().celsius() > limit - margin
                        ? cable.caution(TEXTS.text("supply.insulation", HeatWords.number(limit)))
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
            rows.add(FigureRow.unknown(TEXTS.text("supply.fuses"), TEXTS.text("supply.noFuses")));
            return;
        }
        Fuse first = fuses.get(0);
        boolean alike = fuses.stream()
                .allMatch(fuse ->
                        fuse.ratedAmps() == first.ratedAmps() && fuse.style().equals(first.style()));
        Optional<FuseKind> kind = FuseKind.of(first.style());
        if (!alike || kind.isEmpty()) {
            rows.add(FigureRow.unknown(
                    TEXTS.text("supply.fuses"),
                    alike ? TEXTS.text("supply.noTable", first.style()) : TEXTS.text("supply.unlike")));
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
        String name = TEXTS.text("supply.bank", Integer.toString(bank.count()), HeatWords.number(bank.ratedAmps()));
        if (most instanceof SupplyNoSolution none) {
            rows.add(FigureRow.unknown(name, none.reason() + " " + none.remedy()));
            return;
        }
        Range ratio = new Range(Math.min(ratio(least), ratio(most)), ratio(most));
        FigureRow share = HeatWords.row(
                name,
                new Range(100 * ratio.low(), 100 * ratio.high()),
                "%",
                TEXTS.text(bank.count() > 1 ? "supply.share.many" : "supply.share.one"));
        if (most instanceof FuseAnswer.AboveContinuous above) {
            rows.add(share.caution(above.reason()));
            rows.add(FigureRow.of(TEXTS.text("supply.open"), TEXTS.text("supply.notListed"), "", "", above.remedy())
                    .about(FigureRow.Topic.FUSES_ABOVE));
        } else if (most instanceof FuseAnswer.Opens opens) {
            rows.add(share);
            rows.add(opening(opens));
        } else {
            rows.add(share);
            rows.add(FigureRow.of(
                            TEXTS.text("supply.open"), TEXTS.text("supply.never"), "", "", FuseBank.continuousRule())
                    .about(FigureRow.Topic.FUSES_HOLD));
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
                : TEXTS.text("supply.never");
        FigureRow row = FigureRow.of(
                        TEXTS.text(opens.withinBurst() ? "supply.open.burst" : "supply.open.after"),
                        HeatWords.timeNumber(from),
                        HeatWords.timeUnit(from),
                        HeatWords.timeFigure(from) + " \u2013 " + latest,
                        opens.citation())
                .about(FigureRow.Topic.FUSES_OPEN);
        boolean inTime = from <= question.seconds();
        return inTime ? row.caution(TEXTS.text("supply.within", opens.citation())) : row;
    }
}
