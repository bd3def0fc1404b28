// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.ui.internal.gain;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.ohmstead.measure.standard.LoggedGain;
import org.ohmstead.signal.gain.FullScaleDemand;
import org.ohmstead.signal.gain.GainSetup;
import org.ohmstead.signal.gain.GainTarget;
import org.ohmstead.signal.gain.MeterCheck;
import org.ohmstead.signal.gain.SourceLevels;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Coverage;
import org.ohmstead.workbench.look.Numbers;
import org.ohmstead.workbench.look.Stated;

/** The lines of the table of a set-up. */
final class GainRows {
    private static final int DIGITS = 4;
    private static final String VOLTS = "V";
    private static final String DB = "dB";
    private static final String DBFS = "dBFS";

    private final Messages messages;
    private final List<GainRow> rows = new ArrayList<>();

    private GainRows(Messages messages) {
        this.messages = messages;
    }

    /** Returns the lines of a set-up, with what the log says of the present gain. */
    static List<GainRow> of(GainInputs inputs, Optional<LogFacts.Found<LoggedGain>> present, Messages messages) {
        GainRows rows = new GainRows(messages);
        rows.toSet(inputs.setup());
        rows.check(inputs.check());
        present.ifPresent(found -> rows.present(inputs.setup(), found));
        rows.endPoint(inputs.target());
        rows.room(inputs.setup());
        return List.copyOf(rows.rows);
    }

    private void toSet(GainSetup setup) {
        double volts = setup.sensitivityVoltsRms();
        heading("set");
        add(GainRow.Kind.ACTION, "gain", db(setup.gainDb()), DB);
        add(GainRow.Kind.FIGURE, "gainFactor", number(setup.gainRatio()), "V/V");
        if (setup.target().bridged()) {
            add(GainRow.Kind.ACTION, "channelGain", db(setup.channelGainDb()), DB);
        }
        add(GainRow.Kind.ACTION, "sensitivity", number(volts), VOLTS);
        add(GainRow.Kind.FIGURE, "sensitivityDbu", db(SourceLevels.dbu(volts)), "dBu");
        add(GainRow.Kind.FIGURE, "sensitivityDbv", db(SourceLevels.dbv(volts)), "dBV");
    }

    private void check(MeterCheck check) {
        heading("check");
        GainRow.Kind kind = check.playable() ? GainRow.Kind.ACTION : GainRow.Kind.CAUTION;
        add(kind, "checkSource", db(check.sourceLevelDbfs()), DBFS);
        add(GainRow.Kind.FIGURE, "checkSourceVolts", number(check.sourceVoltsRms()), VOLTS);
        add(GainRow.Kind.ACTION, "checkMeter", number(check.outputVoltsRms()), VOLTS);
        add(GainRow.Kind.FIGURE, "checkWatts", number(check.powerWatts()), "W");
    }

    private void present(GainSetup setup, LogFacts.Found<LoggedGain> found) {
        LoggedGain gain = found.fact();
        rows.add(new GainRow(messages.text("row.present", found.entryId()), "", "", "", GainRow.Kind.HEADING));
        for (LoggedGain.Channel channel : gain.channels()) {
            rows.add(new GainRow(
                    messages.text("row.presentGain", channel.name()),
                    db(channel.gainDb()),
                    DB,
                    uncertainty(gain, channel),
                    GainRow.Kind.FIGURE));
        }
        double highestDb = gain.highest().gainDb();
        add(GainRow.Kind.FIGURE, "presentOverlap", db(setup.atGain(highestDb).overlapDb()), DB);
        add(GainRow.Kind.ACTION, "presentChange", signed(setup.gainDb() - highestDb), DB);
    }

    private String uncertainty(LoggedGain gain, LoggedGain.Channel channel) {
        String how = gain.measured()
                ? messages.text("meaning.measured", gain.stepId())
                : messages.text("meaning.levels", gain.stepId(), channel.levels());
        OptionalDouble standard = channel.standardUncertaintyDb();
        String sure = messages.text("meaning.unknown");
        if (standard.isPresent() && standard.getAsDouble() > 0) {
            double expanded = Coverage.expanded(standard.getAsDouble());
            String stated = Stated.of(channel.gainDb(), expanded, GainRows::db).text();
            sure = messages.text("meaning.uncertainty", stated, Coverage.wordsWithShare());
        }
        String slope = channel.slope().isPresent()
                ? " "
                        + messages.text(
                                "meaning.slope",
                                Numbers.format("%.3f", channel.slope().getAsDouble()))
                : "";
        return how + " " + sure + slope;
    }

    private void endPoint(GainTarget target) {
        heading("endPoint");
        add(GainRow.Kind.FIGURE, "outputVolts", number(target.outputVoltsRms()), VOLTS);
        add(GainRow.Kind.FIGURE, "outputPeak", number(target.outputVoltsPeak()), VOLTS);
        add(GainRow.Kind.FIGURE, "outputAmps", number(target.outputAmpsRms()), "A");
        if (target.bridged()) {
            add(GainRow.Kind.FIGURE, "channelVolts", number(target.channelVoltsRms()), VOLTS);
            add(GainRow.Kind.FIGURE, "channelLoad", number(target.channelLoadOhms()), "\u03a9");
            add(GainRow.Kind.FIGURE, "channelWatts", number(target.channelPowerWatts()), "W");
        }
    }

    private void room(GainSetup setup) {
        FullScaleDemand demand = setup.fullScaleDemand();
        heading("room");
        add(kind(setup.sourceHeadroomDb() < 0), "sourceRoom", db(setup.sourceHeadroomDb()), DB);
        add(kind(setup.amplifierHeadroomDb() < 0), "amplifierRoom", db(setup.amplifierHeadroomDb()), DB);
        add(kind(demand.clipped().isPresent()), "fullScaleVolts", number(demand.voltsRms()), VOLTS);
        add(kind(demand.clipped().isPresent()), "fullScaleWatts", number(demand.powerWatts()), "W");
        add(kind(demand.clipped().isPresent()), "beyondClip", signed(demand.beyondClipDb()), DB);
        if (demand.clipped().isPresent()) {
            add(GainRow.Kind.CAUTION, "clippedWatts", number(demand.clippedPowerWatts()), "W");
        }
    }

    private static GainRow.Kind kind(boolean caution) {
        return caution ? GainRow.Kind.CAUTION : GainRow.Kind.FIGURE;
    }

    private void heading(String key) {
        rows.add(new GainRow(messages.text("row." + key), "", "", "", GainRow.Kind.HEADING));
    }

    private void add(GainRow.Kind kind, String key, String value, String unit) {
        rows.add(new GainRow(messages.text("row." + key), value, unit, messages.text("meaning." + key), kind));
    }

    private static String number(double value) {
        return Numbers.digits(value, DIGITS);
    }

    /** Returns a level with two decimals; what rounds to nothing has no sign. */
    static String db(double value) {
        return Numbers.format("%.2f", Math.abs(value) < 0.005 ? 0 : value);
    }

    static String signed(double value) {
        return Math.abs(value) < 0.005 ? db(0) : Numbers.format("%+.2f", value);
    }
}
