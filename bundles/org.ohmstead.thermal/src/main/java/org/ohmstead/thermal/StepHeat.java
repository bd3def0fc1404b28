// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

import java.util.ArrayList;
import java.util.List;
import org.ohmstead.model.AmplifierHeat;
import org.ohmstead.model.OutputClass;
import org.ohmstead.model.Range;
import org.ohmstead.units.text.Messages;

/**
 * Works out the heat of a step from what is known of the amplifier: measured input power when there is one, else the closed forms for its
 * class, else usual efficiencies. What is not known is taken as a range, and said.
 */
public final class StepHeat {
    private static final Messages TEXTS = Messages.of(StepHeat.class);

    private static final Range USUAL_CONVERTER = new Range(0.8, 0.95);
    private static final Range USUAL_CLASS_D = new Range(0.75, 0.9);
    private static final Range USUAL_CLASS_AB = new Range(0.25, 0.6);
    /** By how much rails reach above the most unclipped output, for the loss in the devices. */
    private static final Range USUAL_HEADROOM = new Range(1, 1.15);

    private final AmplifierHeat facts;
    private final StepDemand demand;
    private final List<String> remarks = new ArrayList<>();
    private HeatEstimate.Basis basis = HeatEstimate.Basis.COMMON_PRACTICE;

    private StepHeat(AmplifierHeat facts, StepDemand demand) {
        this.facts = facts;
        this.demand = demand;
    }

    /** Returns how much heat an amplifier gives off in a step. */
    public static HeatEstimate of(AmplifierHeat facts, StepDemand demand) {
        return new StepHeat(Checks.present(facts, "facts"), Checks.present(demand, "demand")).estimate();
    }

    private HeatEstimate estimate() {
        Range average = heat(demand);
        Range loud = average;
        if (demand.drive().stretches().size() > 1) {
            for (Drive.Stretch stretch : demand.drive().stretches()) {
                Range part = heat(demand.with(stretch.drive()));
                loud = stretch.seconds() > 0 && part.high() > loud.high() ? part : loud;
            }
        }
        double output = demand.outputWatts();
        if (demand.measuredInputWatts().isPresent()) {
            double measured = demand.measuredInputWatts().getAsDouble() - output;
            if (measured >= 0) {
                Range exact = Range.of(measured);
                Range loudest = average.high() > 0 ? scaled(loud, measured / average.middle()) : exact;
                boolean steady = demand.drive().stretches().size() == 1;
                return new HeatEstimate(
                        output, exact, steady ? exact : loudest, HeatEstimate.Basis.MEASURED, List.of());
            }
            remarks.add(TEXTS.text("heat.unused"));
        }
        return new HeatEstimate(
                output, average, loud, basis, remarks.stream().distinct().toList());
    }

    private Range heat(StepDemand part) {
        return switch (facts.outputClass()) {
            case CLASS_AB -> linear(part);
            case CLASS_D -> switching(part);
            case UNKNOWN -> {
                remarks.add(TEXTS.text("heat.noClass"));
                Range linear = linear(part);
                Range switching = switching(part);
                yield new Range(Math.min(linear.low(), switching.low()), Math.max(linear.high(), switching.high()));
            }
        };
    }

    private Range switching(StepDemand part) {
        remarks.add(TEXTS.text("heat.switching"));
        return fromEfficiency(part, USUAL_CLASS_D);
    }

    private Range linear(StepDemand part) {
        List<ClassAbStage> stages = new ArrayList<>();
        if (facts.railVolts().isPresent()) {
            double railVolts = facts.railVolts().getAsDouble();
            stages.add(stage(railVolts));
            double nominal = facts.railSupplyVolts().orElse(part.supplyVolts());
            if (nominal != part.supplyVolts()) {
                stages.add(stage(new Converter(1, false, nominal).railVolts(railVolts, part.supplyVolts())));
                remarks.add(TEXTS.text("heat.rails"));
            }
            basis = HeatEstimate.Basis.RAILS;
        } else if (part.mostOutputVoltsRms().isPresent()) {
            double peakVolts = Math.sqrt(2) * part.mostOutputVoltsRms().getAsDouble();
            stages.add(new ClassAbStage(USUAL_HEADROOM.low() * peakVolts, 2));
            stages.add(new ClassAbStage(USUAL_HEADROOM.high() * peakVolts, 2));
            remarks.add(TEXTS.text("heat.mostPower"));
            basis = facts.outputClass() == OutputClass.UNKNOWN
                    ? HeatEstimate.Basis.COMMON_PRACTICE
                    : HeatEstimate.Basis.MOST_POWER;
        } else {
            remarks.add(TEXTS.text("heat.noRails"));
            return fromEfficiency(part, USUAL_CLASS_AB);
        }
        Range converter = facts.converterEfficiencyRatio().orElseGet(() -> {
            remarks.add(TEXTS.text("heat.converter"));
            return USUAL_CONVERTER;
        });
        Range idle = idle();
        double low = Double.POSITIVE_INFINITY;
        double high = 0;
        for (ClassAbStage stage : stages) {
            PowerSplit split =
                    fitting(stage, part).split(part.drive(), part.load()).times(part.outputs());
            low = Math.min(
                    low,
                    new Converter(converter.high(), true, 1)
                            .balance(split, idle.low())
                            .heatWatts());
            high = Math.max(
                    high,
                    new Converter(converter.low(), true, 1)
                            .balance(split, idle.high())
                            .heatWatts());
        }
        return new Range(low, high);
    }

    private ClassAbStage stage(double railVolts) {
        ClassAbStage channel = ClassAbStage.splitRails(railVolts);
        return demand.bridged() ? channel.bridgedPair() : channel;
    }

    /** Returns the stage, or one whose rails just reach the step when those given do not. */
    private ClassAbStage fitting(ClassAbStage stage, StepDemand part) {
        if (stage.objection(part.drive(), part.load()).isEmpty()) {
            return stage;
        }
        remarks.add(TEXTS.text("heat.railsReach"));
        return new ClassAbStage(Math.sqrt(2) * part.highestVoltsRms(), stage.devices());
    }

    private Range fromEfficiency(StepDemand part, Range efficiency) {
        double output = part.outputWatts();
        Range idle = idle();
        return new Range(
                idle.low() + output * (1 / efficiency.high() - 1), idle.high() + output * (1 / efficiency.low() - 1));
    }

    private Range idle() {
        return facts.idleWatts().orElseGet(() -> {
            remarks.add(TEXTS.text("heat.noIdle"));
            return Range.of(0);
        });
    }

    private static Range scaled(Range range, double factor) {
        return new Range(range.low() * factor, range.high() * factor);
    }
}
