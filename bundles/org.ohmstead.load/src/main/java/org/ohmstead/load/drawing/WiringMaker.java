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

/** Works out which lead goes where, and says it. */
final class WiringMaker {
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
            labels.add(counts.get(resistor.id()) > 1 ? resistor.id() + " no. " + number : resistor.id());
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
                    leads.add(labels.get(i) + " lead 1");
                    out += amps.get(i);
                } else if (ends.get(i)[1] == joint) {
                    leads.add(labels.get(i) + " lead 2");
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
        steps.add("Read the cautions above. Have the amplifier off and its supply disconnected.");
        steps.add("Tag the " + count(analysis.size(), "piece") + " as in the table of pieces, and measure each: "
                + "it must lie within its tolerance" + ranges() + ".");
        steps.add("Mount them on metal or ceramic with free air around, those on heat sinks with thermal compound and"
                + " tight screws, fans blowing along the fins.");
        for (Joint joint : joints().subList(2, names.size())) {
            steps.add("Joint " + joint.name() + ": join " + sentence(joint.leads()) + current(joint) + ".");
        }
        Joint left = joints().get(JointNames.LEFT);
        Joint right = joints().get(JointNames.RIGHT);
        steps.add("Terminal A: connect " + sentence(left.leads()) + current(left) + ".");
        steps.add("Terminal B: connect " + sentence(right.leads()) + current(right) + ".");
        steps.add("Tug at every lead: a loose joint heats first.");
        steps.add("Measure between A and B, with four wires or with the reading of the shorted test leads taken off."
                + " Expect "
                + Figures.ohms(analysis.ohms()) + "; if it is not between "
                + Figures.ohms(analysis.worstCaseLowOhms())
                + " and " + Figures.ohms(analysis.worstCaseHighOhms())
                + ", a joint is wrong. Enter what you measured as"
                + " the load's resistance.");
        steps.add("Lead the cables from A and B to the amplifier. " + cable());
        steps.add("Switch on at a low level first, and look whether any piece gets hot out of turn.");
        return steps;
    }

    private String ranges() {
        List<String> texts = new ArrayList<>();
        for (Resistor resistor : analysis.resistors()) {
            String text = resistor.id() + " between " + Figures.ohms(resistor.ohms() * (1 - resistor.toleranceRatio()))
                    + " and " + Figures.ohms(resistor.ohms() * (1 + resistor.toleranceRatio()));
            if (!texts.contains(text)) {
                texts.add(text);
            }
        }
        return " (" + String.join("; ", texts) + ")";
    }

    private static String current(Joint joint) {
        return joint.ampsRms().isPresent()
                ? " (carries " + Figures.amps(joint.ampsRms().getAsDouble()) + ")"
                : "";
    }

    /** A cross-section by what the leads add; how much current a cable may carry is for the local code. */
    private String cable() {
        String rating = use.powerWatts().isPresent()
                ? " They carry "
                        + Figures.amps(analysis.ampsRms(use.powerWatts().getAsDouble()))
                        + "; see that your code allows the cable that current."
                : " See that your code allows the cable the current.";
        for (double squareMillimetres : CROSS_SECTIONS) {
            double added = CopperWire.ohms(squareMillimetres, METRES_THERE_AND_BACK, COPPER_CELSIUS);
            if (added <= LEADS_RATIO * analysis.ohms()) {
                return "Copper of " + Figures.digits(squareMillimetres, 3) + " mm\u00b2 adds " + Figures.ohms(added)
                        + " for each metre there and back, " + Figures.percent(added / analysis.ohms())
                        + " of the load; thinner ones add more than " + Figures.percent(LEADS_RATIO) + "." + rating;
            }
        }
        return "Keep them as short and as thick as you can: even 120 mm\u00b2 adds more than "
                + Figures.percent(LEADS_RATIO) + " of the load for each metre there and back." + rating;
    }

    private List<String> cautions() {
        List<String> cautions = new ArrayList<>();
        cautions.add(
                "Burns: " + hottest() + " They stay hot for minutes. Let them cool before you touch or move a lead.");
        cautions.add("Fire: keep the load clear of whatever burns or melts, nothing above it that could fall, and never"
                + " leave it alone under power.");
        cautions.add(
                "Ventilation: all of the power ends as heat in the air around; open the room or the housing, and keep"
                        + " fans running until the load has cooled.");
        cautions.add(
                use.bridged()
                        ? "Live terminals: this load hangs between two outputs. Neither terminal is ground. Never join"
                                + " A or B to ground, to a chassis or to an instrument's ground clip."
                        : "Live terminals: A and B carry the amplifier's full output voltage. If the outputs are"
                                + " bridged, neither terminal is ground.");
        for (int i = 0; i < analysis.size(); i++) {
            OptionalDouble allowed = analysis.allowedWatts(i);
            if (use.powerWatts().isPresent() && allowed.isPresent()) {
                double watts = analysis.powerWatts(i, use.powerWatts().getAsDouble());
                if (watts > allowed.getAsDouble()) {
                    cautions.add("Overload: " + labels.get(i) + " would take " + Figures.watts(watts)
                            + " but may take only "
                            + Figures.watts(allowed.getAsDouble()) + " for as long as one likes. Keep the power below "
                            + Figures.watts(analysis.powerLimitWatts().orElse(allowed.getAsDouble()))
                            + " or choose another network.");
                }
            }
        }
        cautions.add(
                "Local codes, the makers' instructions and the judgement of a qualified person come before this list.");
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
                ? "the hottest resistor may reach " + Figures.celsius(surface.getAsDouble()) + "."
                : "resistors under power get hot enough to burn skin.";
    }

    private static String sentence(List<String> leads) {
        int last = leads.size() - 1;
        return last == 0 ? leads.get(0) : String.join(", ", leads.subList(0, last)) + " and " + leads.get(last);
    }

    private static String count(int number, String thing) {
        return number == 1 ? "1 " + thing : number + " " + thing + "s";
    }
}
