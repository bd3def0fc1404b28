// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.drawing;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.function.DoubleSupplier;
import org.ohmstead.load.LoadHeat;
import org.ohmstead.load.Network;
import org.ohmstead.load.NetworkAnalysis;
import org.ohmstead.load.Resistor;
import org.ohmstead.load.drawing.WiringList.Joint;
import org.ohmstead.load.drawing.WiringList.Piece;
import org.ohmstead.load.drawing.WiringList.Use;
import org.ohmstead.model.CopperWire;
import org.ohmstead.units.text.Messages;

/** Works out which lead goes where, and says it. */
final class WiringMaker {
    private static final Messages TEXTS = Messages.of(WiringMaker.class);

    /** Cross-sections of conductors in square millimetres, of IEC 60228. */
    private static final double[] CROSS_SECTIONS = {0.5, 0.75, 1, 1.5, 2.5, 4, 6, 10, 16, 25, 35, 50, 70, 95, 120};

    private static final double LEADS_RATIO = 0.005;
    private static final double METRES_THERE_AND_BACK = 2;
    private static final double COPPER_CELSIUS = 20;
    private static final double TOUCHABLE_CELSIUS = 45;

    private final NetworkAnalysis analysis;
    private final Use use;
    private final List<String> labels = new ArrayList<>();
    private final List<int[]> ends = new ArrayList<>();
    private final List<Double> amps = new ArrayList<>();
    private final JointNames names = new JointNames();

    WiringMaker(NetworkAnalysis analysis, Use use) {
        this.analysis = analysis;
        this.use = use;
        label();
        double total =
                use.powerWatts().isPresent() ? analysis.ampsRms(use.powerWatts().getAsDouble()) : 0;
        join(analysis.network(), JointNames.LEFT, JointNames.RIGHT, total);
    }

    WiringList make() {
        return new WiringList(
                pieces(),
                joints(),
                steps(),
                analysis.ohms(),
                analysis.worstCaseLowOhms(),
                analysis.worstCaseHighOhms(),
                cautions());
    }

    /** Numbers the resistors of a kind of which there are several. */
    private void label() {
        Map<String, Integer> counts = new HashMap<>();
        analysis.resistors().forEach(resistor -> counts.merge(resistor.id(), 1, Integer::sum));
        Map<String, Integer> numbers = new HashMap<>();
        for (Resistor resistor : analysis.resistors()) {
            int number = numbers.merge(resistor.id(), 1, Integer::sum);
            labels.add(
                    counts.get(resistor.id()) > 1
                            ? TEXTS.text("wiring.number", resistor.id(), Integer.toString(number))
                            : resistor.id());
        }
    }

    private void join(Network network, int left, int right, double current) {
        if (network instanceof Network.Series series) {
            int from = left;
            int last = series.members().size() - 1;
            for (int i = 0; i <= last; i++) {
                int to = i < last ? names.another() : right;
                join(series.members().get(i), from, to, current);
                from = to;
            }
        } else if (network instanceof Network.Parallel parallel) {
            for (Network member : parallel.members()) {
                join(member, left, right, current * parallel.ohms() / member.ohms());
            }
        } else {
            ends.add(new int[] {left, right});
            amps.add(current);
        }
    }

    private List<Piece> pieces() {
        List<Piece> pieces = new ArrayList<>();
        for (int i = 0; i < analysis.size(); i++) {
            Resistor resistor = analysis.resistor(i);
            int index = i;
            pieces.add(new Piece(
                    labels.get(i),
                    resistor.ohms(),
                    resistor.ohms() * (1 - resistor.toleranceRatio()),
                    resistor.ohms() * (1 + resistor.toleranceRatio()),
                    JointNames.name(ends.get(i)[0]),
                    JointNames.name(ends.get(i)[1]),
                    analysis.share(i),
                    known(() -> analysis.powerWatts(index, use.powerWatts().getAsDouble())),
                    known(() -> amps.get(index)),
                    analysis.allowedWatts(i)));
        }
        return pieces;
    }

    private OptionalDouble known(DoubleSupplier value) {
        return use.powerWatts().isPresent() ? OptionalDouble.of(value.getAsDouble()) : OptionalDouble.empty();
    }

    private List<Joint> joints() {
        List<Joint> joints = new ArrayList<>();
        for (int joint = 0; joint < names.size(); joint++) {
            List<String> leads = new ArrayList<>();
            double out = 0;
            double in = 0;
            for (int i = 0; i < ends.size(); i++) {
                if (ends.get(i)[0] == joint) {
                    leads.add(TEXTS.text("wiring.lead", labels.get(i), "1"));
                    out += amps.get(i);
                } else if (ends.get(i)[1] == joint) {
                    leads.add(TEXTS.text("wiring.lead", labels.get(i), "2"));
                    in += amps.get(i);
                }
            }
            double current = Math.max(in, out);
            joints.add(new Joint(JointNames.name(joint), leads, known(() -> current)));
        }
        return joints;
    }

    private List<String> steps() {
        List<String> steps = new ArrayList<>();
        steps.add(TEXTS.text("step.off"));
        steps.add(TEXTS.text(
                analysis.size() == 1 ? "step.tag.one" : "step.tag.many", Integer.toString(analysis.size()), ranges()));
        steps.add(TEXTS.text("step.mount"));
        for (Joint joint : joints().subList(2, names.size())) {
            steps.add(joined("step.joint", joint));
        }
        Joint left = joints().get(JointNames.LEFT);
        Joint right = joints().get(JointNames.RIGHT);
        steps.add(joined("step.terminal", left));
        steps.add(joined("step.terminal", right));
        steps.add(TEXTS.text("step.tug"));
        steps.add(TEXTS.text(
                "step.measure",
                Figures.ohms(analysis.ohms()),
                Figures.ohms(analysis.worstCaseLowOhms()),
                Figures.ohms(analysis.worstCaseHighOhms())));
        steps.add(TEXTS.text("step.cables", cable()));
        steps.add(TEXTS.text("step.switchOn"));
        return steps;
    }

    private String ranges() {
        List<String> texts = new ArrayList<>();
        for (Resistor resistor : analysis.resistors()) {
            String text = TEXTS.text(
                    "wiring.range",
                    resistor.id(),
                    Figures.ohms(resistor.ohms() * (1 - resistor.toleranceRatio())),
                    Figures.ohms(resistor.ohms() * (1 + resistor.toleranceRatio())));
            if (!texts.contains(text)) {
                texts.add(text);
            }
        }
        return String.join("; ", texts);
    }

    private static String joined(String key, Joint joint) {
        String leads = sentence(joint.leads());
        return joint.ampsRms().isPresent()
                ? TEXTS.text(
                        key + "Carries",
                        joint.name(),
                        leads,
                        Figures.amps(joint.ampsRms().getAsDouble()))
                : TEXTS.text(key, joint.name(), leads);
    }

    /** A cross-section by what the leads add; how much current a cable may carry is for the local code. */
    private String cable() {
        String rating = use.powerWatts().isPresent()
                ? TEXTS.text(
                        "cable.carries",
                        Figures.amps(analysis.ampsRms(use.powerWatts().getAsDouble())))
                : TEXTS.text("cable.code");
        for (double squareMillimetres : CROSS_SECTIONS) {
            double added = CopperWire.ohms(squareMillimetres, METRES_THERE_AND_BACK, COPPER_CELSIUS);
            if (added <= LEADS_RATIO * analysis.ohms()) {
                return TEXTS.text(
                        "cable.copper",
                        Figures.digits(squareMillimetres, 3),
                        Figures.ohms(added),
                        Figures.percent(added / analysis.ohms()),
                        Figures.percent(LEADS_RATIO),
                        rating);
            }
        }
        return TEXTS.text("cable.thick", Figures.percent(LEADS_RATIO), rating);
    }

    private List<String> cautions() {
        List<String> cautions = new ArrayList<>();
        cautions.add(TEXTS.text("caution.burns", hottest()));
        cautions.add(TEXTS.text("caution.fire"));
        cautions.add(TEXTS.text("caution.ventilation"));
        cautions.add(use.bridged() ? TEXTS.text("caution.bridged") : TEXTS.text("caution.live"));
        for (int i = 0; i < analysis.size(); i++) {
            OptionalDouble allowed = analysis.allowedWatts(i);
            if (use.powerWatts().isPresent() && allowed.isPresent()) {
                double watts = analysis.powerWatts(i, use.powerWatts().getAsDouble());
                if (watts > allowed.getAsDouble()) {
                    cautions.add(TEXTS.text(
                            "caution.overload",
                            labels.get(i),
                            Figures.watts(watts),
                            Figures.watts(allowed.getAsDouble()),
                            Figures.watts(analysis.powerLimitWatts().orElse(allowed.getAsDouble()))));
                }
            }
        }
        cautions.add(TEXTS.text("caution.codes"));
        return cautions;
    }

    private String hottest() {
        OptionalDouble surface = use.powerWatts().isEmpty()
                ? OptionalDouble.empty()
                : LoadHeat.atWatts(
                                analysis.network(),
                                use.powerWatts().getAsDouble(),
                                LoadHeat.Air.of(use.ambientCelsius()))
                        .map(LoadHeat::hottestSurfaceCelsius)
                        .orElse(OptionalDouble.empty());
        return surface.isPresent() && surface.getAsDouble() > TOUCHABLE_CELSIUS
                ? TEXTS.text("caution.hottest", Figures.celsius(surface.getAsDouble()))
                : TEXTS.text("caution.hot");
    }

    private static String sentence(List<String> leads) {
        int last = leads.size() - 1;
        return last == 0
                ? leads.get(0)
                : TEXTS.text("wiring.and", String.join(", ", leads.subList(0, last)), leads.get(last));
    }
}
