// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.study;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.ohmstead.curves.internal.StageCurve;
import org.ohmstead.curves.internal.StageStarts;
import org.ohmstead.units.text.Messages;

/** What a kind of model has to be found for given readings, where the search starts and may go. */
final class ModelForm {
    private static final Messages TEXTS = Messages.of(ModelForm.class);

    /** A negative source resistance can come from scatter, but not more than this share of the lowest load. */
    private static final double LOWEST_OUTPUT_SHARE = -0.5;

    private static final double MOST_FALL = 0.9;
    private static final double MOST_RISE = 0.5;
    /** A knee can be seen with so many voltages on either side. */
    private static final int VOLTAGES_BESIDE_KNEE = 2;

    private static final int CONDITIONS_AT_LIMIT = 2;
    private static final int MOST_STARTS = 12;

    private final ModelKind kind;
    private final Terrain terrain;
    private final List<StageParameter> parameters;

    ModelForm(ModelKind kind, Terrain terrain) {
        this.kind = kind;
        this.terrain = terrain;
        this.parameters = parameters(kind, terrain.severalLoads());
    }

    private static List<StageParameter> parameters(ModelKind kind, boolean severalLoads) {
        List<StageParameter> found = new ArrayList<>();
        if (kind == ModelKind.REGULATED_THROUGHOUT) {
            found.add(StageParameter.STEADY_PEAK_VOLTS);
        } else {
            found.add(StageParameter.GAIN);
            if (kind != ModelKind.PROPORTIONAL) {
                found.add(StageParameter.SATURATION_VOLTS);
            }
        }
        if (severalLoads) {
            found.add(StageParameter.OUTPUT_OHMS);
        }
        if (kind == ModelKind.REGULATED) {
            found.add(StageParameter.KNEE_VOLTS);
        } else if (kind == ModelKind.CURRENT_LIMITED) {
            found.add(StageParameter.LIMIT_AMPS);
        } else if (kind == ModelKind.DROOPING) {
            found.add(StageParameter.DROOP);
        }
        return List.copyOf(found);
    }

    ModelKind kind() {
        return kind;
    }

    List<StageParameter> parameters() {
        return parameters;
    }

    int[] free() {
        int[] free = new int[parameters.size()];
        for (int i = 0; i < free.length; i++) {
            free[i] = parameters.get(i).slot();
        }
        return free;
    }

    /** Returns why the readings cannot tell this model's values, or nothing if they can. */
    Optional<String> obstacle() {
        int voltages = terrain.voltages().size();
        if (kind == ModelKind.PROPORTIONAL) {
            return Optional.empty();
        }
        if (voltages < 2) {
            return Optional.of(TEXTS.text("form.oneVoltage"));
        }
        if (kind == ModelKind.REGULATED && voltages < 2 * VOLTAGES_BESIDE_KNEE) {
            return Optional.of(TEXTS.text("form.knee", Integer.toString(voltages)));
        }
        if (kind == ModelKind.DROOPING && terrain.warming().isEmpty()) {
            return Optional.of(TEXTS.text("form.droop"));
        }
        if (terrain.conditions() < parameters.size() && kind != ModelKind.DROOPING
                || terrain.points().size() < parameters.size()) {
            return Optional.of(TEXTS.text(
                    "form.tooFew", Integer.toString(parameters.size()), Integer.toString(terrain.conditions())));
        }
        return Optional.empty();
    }

    double[] lower(List<ParameterBounds> bounds) {
        double[] lower = new double[StageCurve.SLOTS];
        Arrays.fill(lower, Double.NEGATIVE_INFINITY);
        lower[StageCurve.GAIN] = 0;
        lower[StageCurve.OUTPUT] = LOWEST_OUTPUT_SHARE * terrain.lowestOhms();
        lower[StageCurve.LIMIT] = 0;
        lower[StageCurve.DROOP] = -MOST_RISE / Math.max(Double.MIN_NORMAL, terrain.mostProgress());
        if (kind == ModelKind.REGULATED && obstacle().isEmpty()) {
            lower[StageCurve.KNEE] = terrain.voltages().get(VOLTAGES_BESIDE_KNEE - 1);
        }
        for (ParameterBounds bound : bounds) {
            if (parameters.contains(bound.parameter())) {
                boolean mirrored = bound.parameter().sign() < 0;
                double value = mirrored ? -bound.upper() : bound.lower();
                int slot = bound.parameter().slot();
                lower[slot] = Math.max(lower[slot], value);
            }
        }
        return lower;
    }

    double[] upper(List<ParameterBounds> bounds) {
        double[] upper = new double[StageCurve.SLOTS];
        Arrays.fill(upper, Double.POSITIVE_INFINITY);
        upper[StageCurve.DROOP] = MOST_FALL / Math.max(Double.MIN_NORMAL, terrain.mostProgress());
        if (kind == ModelKind.REGULATED && obstacle().isEmpty()) {
            upper[StageCurve.KNEE] = terrain.voltages().get(terrain.voltages().size() - VOLTAGES_BESIDE_KNEE);
        }
        for (ParameterBounds bound : bounds) {
            if (parameters.contains(bound.parameter())) {
                boolean mirrored = bound.parameter().sign() < 0;
                double value = mirrored ? -bound.lower() : bound.upper();
                int slot = bound.parameter().slot();
                upper[slot] = Math.min(upper[slot], value);
            }
        }
        return upper;
    }

    /** Returns where searches start: at one place for a smooth model, else at one for each way the readings may fall. */
    List<double[]> starts() {
        StageStarts starts = new StageStarts(terrain.data(), straight());
        return switch (kind) {
            case REGULATED -> kneeStarts(starts);
            case CURRENT_LIMITED -> limitStarts(starts);
            default -> List.of(starts.through(index -> true));
        };
    }

    private int[] straight() {
        int[] free = free();
        int count = 0;
        while (count < free.length && free[count] <= StageCurve.OUTPUT) {
            count++;
        }
        return Arrays.copyOf(free, count);
    }

    private List<double[]> kneeStarts(StageStarts starts) {
        List<double[]> found = new ArrayList<>();
        List<Double> voltages = terrain.voltages();
        int last = voltages.size() - VOLTAGES_BESIDE_KNEE;
        int stride = Math.max(1, (last - VOLTAGES_BESIDE_KNEE + 1) / MOST_STARTS);
        for (int first = VOLTAGES_BESIDE_KNEE; first <= last; first += stride) {
            double above = voltages.get(first);
            double knee = (voltages.get(first - 1) + above) / 2;
            double[] slots = starts.through(index -> terrain.data().supplyVolts()[index] < above);
            slots[StageCurve.KNEE] = knee;
            found.add(slots);
        }
        return found;
    }

    private List<double[]> limitStarts(StageStarts starts) {
        double[] peaks = terrain.data().peakVolts();
        double[] amps = new double[peaks.length];
        Arrays.setAll(amps, i -> peaks[i] / terrain.data().channelOhms()[i]);
        double[] sorted = amps.clone();
        Arrays.sort(sorted);
        List<double[]> found = new ArrayList<>();
        int last = sorted.length - CONDITIONS_AT_LIMIT;
        int first = Math.max(1, parameters.size() - 1);
        int stride = Math.max(1, (last - first + 1) / MOST_STARTS);
        for (int cut = first; cut <= last; cut += stride) {
            double from = sorted[cut];
            double mean = Arrays.stream(sorted, cut, sorted.length).average().orElseThrow();
            double[] slots = starts.through(index -> amps[index] < from);
            slots[StageCurve.LIMIT] = mean;
            found.add(slots);
        }
        return found;
    }

    /** Returns the model with the values found. */
    SupplyModel model(double[] slots) {
        double gain = slots[StageCurve.GAIN];
        double saturation = slots[StageCurve.SATURATION];
        OptionalDouble output =
                terrain.severalLoads() ? OptionalDouble.of(slots[StageCurve.OUTPUT]) : OptionalDouble.empty();
        return switch (kind) {
            case UNREGULATED -> new SupplyModel.Unregulated(gain, saturation, output);
            case REGULATED -> new SupplyModel.Regulated(gain, saturation, output, slots[StageCurve.KNEE]);
            case REGULATED_THROUGHOUT -> new SupplyModel.RegulatedThroughout(-saturation, output);
            case CURRENT_LIMITED -> new SupplyModel.CurrentLimited(gain, saturation, output, slots[StageCurve.LIMIT]);
            case DROOPING ->
                new SupplyModel.Drooping(
                        gain,
                        saturation,
                        output,
                        slots[StageCurve.DROOP],
                        terrain.coldAt(),
                        terrain.warming().orElseThrow());
            case PROPORTIONAL -> new SupplyModel.Proportional(gain, output);
        };
    }

    /** Returns why a solution is not what its kind says, e.g. because the limit does not touch enough readings. */
    Optional<String> unfit(double[] slots) {
        if (kind != ModelKind.CURRENT_LIMITED) {
            return Optional.empty();
        }
        int limited = 0;
        double[] gradient = new double[StageCurve.SLOTS];
        for (int i = 0; i < terrain.data().size(); i++) {
            StageCurve.peakVolts(
                    slots,
                    terrain.data().supplyVolts()[i],
                    terrain.data().channelOhms()[i],
                    terrain.data().progress()[i],
                    gradient);
            limited += gradient[StageCurve.LIMIT] > 0 ? 1 : 0;
        }
        return limited >= CONDITIONS_AT_LIMIT ? Optional.empty() : Optional.of(TEXTS.text("form.noLimit"));
    }
}
