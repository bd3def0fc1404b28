// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.ohmstead.model.AmplifierHeat;
import org.ohmstead.model.Mode;
import org.ohmstead.model.OutputClass;
import org.ohmstead.model.Range;
import org.ohmstead.thermal.Drive;
import org.ohmstead.thermal.StageLoad;
import org.ohmstead.thermal.StepDemand;
import org.ohmstead.units.Unit;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.TypeConversionException;

/** A step and an amplifier without a project, as options. */
final class StepOptions {
    private static final double MOST_VOLTS = 1000;
    private static final double MOST_WATTS = 100_000;
    private static final double MOST_OHMS = 10_000;
    private static final double MOST_KELVIN_PER_WATT = 1000;
    private static final double MOST_JOULES_PER_KELVIN = 1e7;
    private static final double LEAST = 1e-3;
    private static final double LOWEST_DB = -200;
    private static final int MOST_CHANNELS = 16;
    private static final double PERCENT = 100;

    @Option(names = "--supply-volts", paramLabel = "U", descriptionKey = "step.supply-volts")
    private String supplyVolts;

    @Option(names = "--load-ohms", paramLabel = "R", descriptionKey = "step.load-ohms")
    private String loadOhms;

    @Option(names = "--mode", paramLabel = "MODE", defaultValue = "STEREO", descriptionKey = "step.mode")
    private Mode mode;

    @Option(names = "--channels", paramLabel = "N", defaultValue = "2", descriptionKey = "step.channels")
    private int channels;

    @Option(names = "--watts", paramLabel = "P", descriptionKey = "step.watts")
    private String watts;

    @Option(names = "--most-watts", paramLabel = "P", descriptionKey = "step.most-watts")
    private String mostWatts;

    @Mixin
    private BurstOptions bursts;

    @Option(names = "--low-db", paramLabel = "DB", defaultValue = "-20", descriptionKey = "step.low-db")
    private String lowDb;

    @Option(
            names = "--class",
            paramLabel = "CLASS",
            defaultValue = "unknown",
            converter = ClassConverter.class,
            descriptionKey = "step.class")
    private OutputClass outputClass;

    @Option(names = "--rail-volts", paramLabel = "U", descriptionKey = "step.rail-volts")
    private String railVolts;

    @Option(names = "--direct", descriptionKey = "step.direct")
    private boolean direct;

    @Option(names = "--converter-percent", paramLabel = "P", descriptionKey = "step.converter-percent")
    private String converter;

    @Option(names = "--efficiency-percent", paramLabel = "P", descriptionKey = "step.efficiency-percent")
    private String efficiency;

    @Option(names = "--input-watts", paramLabel = "P", descriptionKey = "step.input-watts")
    private String inputWatts;

    @Option(names = "--idle-watts", paramLabel = "P", descriptionKey = "step.idle-watts")
    private String idleWatts;

    @Option(names = "--case-kelvin-per-watt", paramLabel = "R", descriptionKey = "step.case-kelvin-per-watt")
    private String caseKelvinPerWatt;

    @Option(names = "--case-joules-per-kelvin", paramLabel = "C", descriptionKey = "step.case-joules-per-kelvin")
    private String caseJoulesPerKelvin;

    @Option(names = "--case-limit-celsius", paramLabel = "T", descriptionKey = "step.case-limit-celsius")
    private String caseLimitCelsius;

    @Option(names = "--device-kelvin-per-watt", paramLabel = "R", descriptionKey = "step.device-kelvin-per-watt")
    private String deviceKelvinPerWatt;

    @Option(names = "--device-limit-celsius", paramLabel = "T", descriptionKey = "step.device-limit-celsius")
    private String deviceLimitCelsius;

    /** Returns whether a step is described without a project. */
    boolean given() {
        return supplyVolts != null || loadOhms != null || watts != null;
    }

    /** Returns whether the output stage hangs on the supply. */
    boolean direct() {
        return direct;
    }

    /** Returns the supply's volts without a load. */
    double openVolts() throws InputException {
        return Quantities.within(
                needed(supplyVolts, "--supply-volts", "14.4"), Unit.VOLT, 1, MOST_VOLTS, "--supply-volts");
    }

    /** Returns what the step asks of the amplifier. */
    StepDemand demand() throws InputException {
        double volts = openVolts();
        StageLoad load = StageLoad.resistor(
                Quantities.within(needed(loadOhms, "--load-ohms", "4"), Unit.OHM, LEAST, MOST_OHMS, "--load-ohms"));
        double power = Quantities.within(needed(watts, "--watts", "90"), Unit.WATT, 0, MOST_WATTS, "--watts");
        if (channels < 1 || channels > MOST_CHANNELS) {
            throw new InputException(Texts.of("step.channels", channels, MOST_CHANNELS));
        }
        OptionalDouble most = Quantities.optionalWithin(mostWatts, Unit.WATT, power, MOST_WATTS, "--most-watts");
        StepDemand demand = new StepDemand(
                drive(load.voltsRms(power)),
                load,
                mode == Mode.STEREO ? channels : 1,
                mode == Mode.BRIDGED,
                volts,
                most.isPresent() && most.getAsDouble() > 0
                        ? OptionalDouble.of(load.voltsRms(most.getAsDouble()))
                        : OptionalDouble.empty(),
                OptionalDouble.empty());
        return withInput(demand);
    }

    private Drive drive(double voltsRms) throws InputException {
        if (!bursts.given()) {
            return new Drive.Sine(voltsRms);
        }
        BurstOptions.Rhythm rhythm = bursts.rhythm();
        double low = Quantities.within(lowDb, Unit.DECIBEL, LOWEST_DB, 0, "--low-db");
        return new Drive.Burst(
                voltsRms,
                rhythm.onSeconds(),
                voltsRms * Math.pow(10, low / 20),
                rhythm.periodSeconds() - rhythm.onSeconds());
    }

    private StepDemand withInput(StepDemand demand) throws InputException {
        if (efficiency != null && inputWatts != null) {
            throw new InputException(Texts.of("step.input"));
        }
        double output = demand.outputWatts();
        OptionalDouble input = Quantities.optionalWithin(inputWatts, Unit.WATT, output, MOST_WATTS, "--input-watts");
        if (efficiency != null) {
            input = OptionalDouble.of(
                    output * PERCENT / Quantities.within(efficiency, Unit.PERCENT, 1, PERCENT, "--efficiency-percent"));
        }
        return new StepDemand(
                demand.drive(),
                demand.load(),
                demand.outputs(),
                demand.bridged(),
                demand.supplyVolts(),
                demand.mostOutputVoltsRms(),
                input);
    }

    /** Returns what is known of the amplifier. */
    AmplifierHeat facts() throws InputException {
        Optional<Range> percent = Quantities.optionalRange(converter, Unit.PERCENT, 1, PERCENT, "--converter-percent");
        if (direct && percent.isPresent()) {
            throw new InputException(Texts.of("step.direct"));
        }
        return AmplifierHeat.NONE
                .withOutputClass(outputClass)
                .withRailVolts(Quantities.optionalWithin(railVolts, Unit.VOLT, LEAST, MOST_VOLTS, "--rail-volts"))
                .withConverterEfficiencyRatio(
                        direct
                                ? Optional.of(Range.of(1))
                                : percent.map(range -> new Range(range.low() / PERCENT, range.high() / PERCENT)))
                .withIdleWatts(Quantities.optionalRange(idleWatts, Unit.WATT, 0, MOST_WATTS, "--idle-watts"))
                .withCaseKelvinPerWatt(resistance(caseKelvinPerWatt, LEAST, "--case-kelvin-per-watt"))
                .withCaseJoulesPerKelvin(Quantities.optionalRange(
                        caseJoulesPerKelvin, Unit.NONE, LEAST, MOST_JOULES_PER_KELVIN, "--case-joules-per-kelvin"))
                .withCaseLimitCelsius(limit(caseLimitCelsius, "--case-limit-celsius"))
                .withDeviceKelvinPerWatt(resistance(deviceKelvinPerWatt, 0, "--device-kelvin-per-watt"))
                .withDeviceLimitCelsius(limit(deviceLimitCelsius, "--device-limit-celsius"));
    }

    private static Optional<Range> resistance(String text, double lowest, String option) throws InputException {
        return Quantities.optionalRange(text, Unit.KELVIN_PER_WATT, lowest, MOST_KELVIN_PER_WATT, option);
    }

    private static OptionalDouble limit(String text, String option) throws InputException {
        return Quantities.optionalWithin(text, Unit.CELSIUS, -60, 400, option);
    }

    private static String needed(String text, String option, String example) throws InputException {
        if (text == null) {
            throw new InputException(Texts.of("step.missing", option, example));
        }
        return text;
    }

    /** Reads a class as people write it. */
    static final class ClassConverter implements ITypeConverter<OutputClass> {
        @Override
        public OutputClass convert(String text) {
            return Arrays.stream(OutputClass.values())
                    .filter(each -> word(each).equalsIgnoreCase(text.strip()))
                    .findFirst()
                    .orElseThrow(() -> new TypeConversionException(Texts.of("step.class", text)));
        }

        private static String word(OutputClass outputClass) {
            return outputClass.name().toLowerCase(Locale.ROOT).replace("class_", "");
        }
    }
}
