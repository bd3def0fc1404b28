// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.lessons.internal;

import java.util.List;
import java.util.Map;
import org.ohmstead.lessons.Answer;
import org.ohmstead.lessons.Control;
import org.ohmstead.lessons.Controls;
import org.ohmstead.lessons.Figure;
import org.ohmstead.lessons.Lesson;
import org.ohmstead.lessons.LessonResult;
import org.ohmstead.lessons.Picture;
import org.ohmstead.load.Leads;
import org.ohmstead.load.TerminalReading;
import org.ohmstead.model.CopperWire;
import org.ohmstead.plot.Mark;
import org.ohmstead.plot.MarkerShape;
import org.ohmstead.plot.Plot;
import org.ohmstead.plot.Style;
import org.ohmstead.thermal.StageLoad;
import org.ohmstead.units.Unit;
import org.ohmstead.units.text.Messages;

/** What the leads between terminals and load do to a power worked out from the terminal volts. */
final class FourWires {
    private static final Map<String, Double> SECTIONS =
            Map.of("mm2-0-75", 0.75, "mm2-1-5", 1.5, "mm2-2-5", 2.5, "mm2-4", 4.0, "mm2-6", 6.0);
    private static final double CELSIUS = 20;
    private static final double MOST_LEAD_OHMS = 0.5;
    private static final double WARM_WATTS = 5;

    private final Words words;

    private FourWires(Words words) {
        this.words = words;
    }

    static Lesson lesson(Messages messages) {
        Words words = new Words(messages, "four-wires");
        List<Control> controls = List.of(
                words.logSlider("load", Unit.OHM, 0.5, 16, 4, 3),
                words.slider("length", Unit.METRE, 0.1, 10, 3, 0.02, 3),
                words.choice("section", 1, "mm2-0-75", "mm2-1-5", "mm2-2-5", "mm2-4", "mm2-6"),
                words.slider("contacts", Unit.OHM, 0, 0.05, 0.005, 0.001, 2),
                words.slider("volts", Unit.VOLT, 1, 60, 20, 0.5, 3));
        return words.lesson(controls, words.ask(Unit.PERCENT, 0.2, 0.3, 3), new FourWires(words)::at);
    }

    private LessonResult at(Controls values) {
        double ohms = values.number("load");
        double volts = values.number("volts");
        double copper = CopperWire.ohms(SECTIONS.get(values.chosen("section")), 2 * values.number("length"), CELSIUS);
        double leads = copper + values.number("contacts");
        TerminalReading reading = new TerminalReading(ohms, leads);
        double loadVolts = volts * reading.voltsRatio();
        double amps = loadVolts / ohms;
        double claimed = StageLoad.resistor(ohms).watts(volts);
        double real = StageLoad.resistor(ohms).watts(loadVolts);
        double percent = 100 * reading.loadPowerOverstatementRatio();
        double leadWatts = reading.leadWatts(real);
        List<Figure> figures = List.of(
                words.hidden("overstated", percent, Unit.PERCENT, 3),
                words.given("leads", leads, Unit.OHM, 3),
                words.given("two-wire", reading.terminalOhms(), Unit.OHM, 4),
                words.hidden("four-wire", Leads.fourWireOhms(loadVolts, amps), Unit.OHM, 4),
                words.hidden("load-volts", loadVolts, Unit.VOLT, 4),
                words.hidden("claimed", claimed, Unit.WATT, 4),
                words.hidden("real", real, Unit.WATT, 4),
                words.hidden("lead-watts", leadWatts, Unit.WATT, 3),
                words.hidden("terminal-overstated", 100 * reading.terminalPowerOverstatementRatio(), Unit.PERCENT, 3));
        Answer answer = new Answer.Number(
                percent,
                words.say(
                        "reason",
                        words.text(leads, Unit.OHM, 2),
                        words.text(claimed, Unit.WATT, 4),
                        words.text(real, Unit.WATT, 4)));
        List<String> remarks = List.of(words.say("remark.sense", words.text(loadVolts, Unit.VOLT, 4)));
        List<String> cautions =
                leadWatts > WARM_WATTS ? List.of(words.say("warm", words.text(leadWatts, Unit.WATT, 2))) : List.of();
        return new LessonResult(
                figures,
                List.of(new Picture("overstatement", plot(ohms, leads, percent), true)),
                answer,
                remarks,
                cautions);
    }

    private Plot plot(double ohms, double leads, double percent) {
        double most = Math.max(MOST_LEAD_OHMS / 2, leads);
        return Plot.of(
                        words.say("plot.title"),
                        words.axis("leads", Unit.OHM),
                        words.axis("overstated", Unit.PERCENT).withLower(0))
                .withSeries(Lines.linear(
                        words.say("plot.line", words.text(ohms, Unit.OHM, 3)),
                        0,
                        most,
                        r -> 100 * new TerminalReading(ohms, r).loadPowerOverstatementRatio(),
                        Style.LINE,
                        0))
                .withMark(Mark.point(leads, percent, words.text(leads, Unit.OHM, 2), MarkerShape.CIRCLE, 0));
    }
}
