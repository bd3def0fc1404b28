// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.scpi;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicBoolean;
import org.ohmstead.measure.Bench;
import org.ohmstead.measure.MeasurementException;
import org.ohmstead.measure.Settings;
import org.ohmstead.measure.Subject;
import org.ohmstead.model.Supply;
import org.ohmstead.units.text.Messages;

/** Connects to the instruments that have an address, and lets all go if one of them fails. */
final class BenchOpener {
    private static final Messages TEXTS = Messages.of(BenchOpener.class);
    private final Subject subject;
    private final Settings settings;
    private final Map<ScpiAddress, ScpiConnection> connections = new LinkedHashMap<>();
    private final AtomicBoolean standing = new AtomicBoolean();
    private CommandSets sets = CommandSets.shipped();
    private ScpiOptions options = ScpiOptions.USUAL;

    BenchOpener(Subject subject, Settings settings) {
        this.subject = subject;
        this.settings = settings;
    }

    Bench open() throws MeasurementException, InterruptedException {
        String folder = settings.text("commands.folder");
        if (!folder.isBlank()) {
            try {
                sets = CommandSets.of(Path.of(folder));
            } catch (InvalidPathException wrong) {
                throw MeasurementException.of(() -> TEXTS.text("open.noFolder", Answer.shown(folder)), wrong);
            }
        }
        options = ScpiOptions.USUAL
                .withWaits(seconds("link.connectSeconds"), seconds("link.answerSeconds"))
                .withTerminator(
                        switch (settings.choice("link.lineEnd")) {
                            case "CRLF" -> "\r\n";
                            case "CR" -> "\r";
                            default -> "\n";
                        });
        ScpiBench bench = null;
        try {
            BenchParts parts = parts();
            bench = new ScpiBench(parts, subject, standing);
            begin(parts);
            return bench;
        } catch (MeasurementException | InterruptedException failed) {
            letGo(bench, failed);
            throw failed;
        }
    }

    private void letGo(ScpiBench bench, Throwable failed) {
        try {
            if (bench != null) {
                bench.close();
            }
            for (ScpiConnection connection : connections.values()) {
                connection.close();
            }
        } catch (MeasurementException alsoFailed) {
            failed.addSuppressed(alsoFailed);
        }
    }

    private BenchParts parts() throws MeasurementException, InterruptedException {
        Optional<PowerSupply> supply = has(BenchSettings.SUPPLY) ? Optional.of(supply()) : Optional.empty();
        Optional<Generator> generator = has(BenchSettings.GENERATOR) ? Optional.of(generator()) : Optional.empty();
        Optional<Recorder> recorder = has(BenchSettings.SCOPE) ? Optional.of(recorder()) : Optional.empty();
        double shuntOhms = settings.number(BenchSettings.AMMETER + ".shuntOhms");
        Optional<Multimeter> voltmeter = meter(BenchSettings.VOLTMETER, "measure volts");
        Optional<Multimeter> ammeter = meter(BenchSettings.AMMETER, shuntOhms > 0 ? "measure volts" : "measure amps");
        Optional<Multimeter> caseThermometer = meter(BenchSettings.CASE, "measure temperature");
        Optional<Multimeter> airThermometer = meter(BenchSettings.AIR, "measure temperature");
        if (connections.isEmpty()) {
            throw MeasurementException.of(() -> TEXTS.text("open.noAddress"));
        }
        return new BenchParts(
                List.copyOf(connections.values()),
                supply,
                generator,
                recorder,
                voltmeter,
                ammeter,
                shuntOhms,
                caseThermometer,
                airThermometer,
                limits(),
                options);
    }

    private BenchParts.Limits limits() {
        Supply projectSupply = subject.project().bench().supply();
        double amps = settings.number(BenchSettings.SUPPLY + ".limitAmps");
        return new BenchParts.Limits(
                amps > 0 ? amps : projectSupply.currentLimitAmps(),
                Math.min(settings.number(BenchSettings.SUPPLY + ".mostVolts"), projectSupply.highestVolts()),
                settings.number(BenchSettings.SUPPLY + ".settleSeconds"),
                settings.flag(BenchSettings.SUPPLY + ".remoteSense"),
                settings.number(BenchSettings.SUPPLY + ".agreementVolts"),
                settings.number(BenchSettings.GENERATOR + ".fullOutputVoltsRms"),
                settings.flag("load.changedInTime"));
    }

    private void begin(BenchParts parts) throws MeasurementException, InterruptedException {
        boolean reset = settings.flag("link.reset");
        if (parts.generator().isPresent()) {
            parts.generator().get().begin(reset);
        }
        if (parts.supply().isPresent()) {
            parts.supply().get().begin(reset && ownConnection(BenchSettings.SUPPLY));
        }
        if (parts.recorder().isPresent()) {
            parts.recorder().get().oscilloscope().begin(reset && ownConnection(BenchSettings.SCOPE));
        }
        beginMeter(parts.voltmeter(), BenchSettings.VOLTMETER);
        beginMeter(parts.ammeter(), BenchSettings.AMMETER);
        beginMeter(parts.caseThermometer(), BenchSettings.CASE);
        beginMeter(parts.airThermometer(), BenchSettings.AIR);
    }

    private void beginMeter(Optional<Multimeter> meter, String id) throws MeasurementException, InterruptedException {
        if (meter.isPresent()) {
            meter.get().begin(settings.flag("link.reset") && ownConnection(id));
        }
    }

    /** Whether no role begun before has this address, which a second *RST would bring out of its state. */
    private boolean ownConnection(String id) throws MeasurementException {
        ScpiAddress own = address(id);
        for (String other : List.of(
                BenchSettings.GENERATOR,
                BenchSettings.SUPPLY,
                BenchSettings.SCOPE,
                BenchSettings.VOLTMETER,
                BenchSettings.AMMETER,
                BenchSettings.CASE,
                BenchSettings.AIR)) {
            if (other.equals(id)) {
                return true;
            }
            if (has(other) && address(other).equals(own)) {
                return false;
            }
        }
        return true;
    }

    private boolean metersApart() throws MeasurementException {
        for (String id : List.of(
                BenchSettings.SUPPLY,
                BenchSettings.VOLTMETER,
                BenchSettings.AMMETER,
                BenchSettings.CASE,
                BenchSettings.AIR)) {
            if (has(id) && address(id).equals(address(BenchSettings.SCOPE))) {
                return false;
            }
        }
        return true;
    }

    private PowerSupply supply() throws MeasurementException, InterruptedException {
        CommandSet set = set(BenchSettings.SUPPLY, InstrumentRole.SUPPLY);
        return new PowerSupply(
                connection(BenchSettings.SUPPLY), set, channel(BenchSettings.SUPPLY + ".channel"), this::allowed);
    }

    private Generator generator() throws MeasurementException, InterruptedException {
        CommandSet set = set(BenchSettings.GENERATOR, InstrumentRole.GENERATOR);
        List<String> outputs = channels(BenchSettings.GENERATOR + ".outputs");
        if (outputs.size() > 1 && !(set.fills("output on", "channel") && set.fills("set sine", "channel"))) {
            throw MeasurementException.of(() -> TEXTS.text("open.oneOutput", set.id(), String.join(",", outputs)));
        }
        double fullOutputVoltsRms = settings.number(BenchSettings.GENERATOR + ".fullOutputVoltsRms");
        return new Generator(connection(BenchSettings.GENERATOR), set, outputs, fullOutputVoltsRms, this::allowed);
    }

    private Recorder recorder() throws MeasurementException, InterruptedException {
        CommandSet set = set(BenchSettings.SCOPE, InstrumentRole.OSCILLOSCOPE);
        List<String> channels = channels(BenchSettings.SCOPE + ".channels");
        List<String> input =
                settings.text(BenchSettings.SCOPE + ".inputChannel").isBlank()
                        ? List.of()
                        : channels(BenchSettings.SCOPE + ".inputChannel");
        if (input.size() > 1 || input.stream().anyMatch(channels::contains)) {
            throw MeasurementException.of(() -> TEXTS.text("open.inputChannel", String.join(",", input)));
        }
        if (channels.size() + input.size() > 1
                && !(set.fills("fetch", "channel") && set.fills("set range", "channel"))) {
            throw MeasurementException.of(() -> TEXTS.text("open.oneChannel", set.id()));
        }
        double inputAttenuation = settings.number(BenchSettings.SCOPE + ".inputAttenuation");
        Recorder.Wiring wiring = new Recorder.Wiring(
                channels,
                input.stream().findFirst(),
                settings.number(BenchSettings.SCOPE + ".attenuation"),
                inputAttenuation,
                Math.sqrt(2) * settings.number(BenchSettings.GENERATOR + ".fullOutputVoltsRms") / inputAttenuation,
                settings.choice(BenchSettings.SCOPE + ".bridged").equals("difference"),
                metersApart());
        return new Recorder(
                new Oscilloscope(connection(BenchSettings.SCOPE), set),
                wiring,
                ranges(),
                settings.number(BenchSettings.SCOPE + ".sampleRateHz"),
                settings.count(BenchSettings.SCOPE + ".mostPoints"),
                options.answerWait());
    }

    private Optional<Multimeter> meter(String id, String action) throws MeasurementException, InterruptedException {
        if (!has(id)) {
            return Optional.empty();
        }
        CommandSet set = set(id, InstrumentRole.MULTIMETER);
        Multimeter meter = new Multimeter(connection(id), set, channel(id + ".channel"));
        meter.require(action);
        return Optional.of(meter);
    }

    private boolean allowed() {
        return !standing.get();
    }

    private boolean has(String id) {
        return !settings.text(id + ".address").isBlank();
    }

    private ScpiAddress address(String id) throws MeasurementException {
        return ScpiAddress.parse(settings.text(id + ".address"));
    }

    private CommandSet set(String id, InstrumentRole role) throws MeasurementException {
        return sets.get(settings.text(id + ".commands").strip(), role);
    }

    private ScpiConnection connection(String id) throws MeasurementException, InterruptedException {
        ScpiAddress address = address(id);
        ScpiConnection connection = connections.get(address);
        if (connection == null) {
            connection = ScpiConnection.open(address, options);
            connections.put(address, connection);
        }
        return connection;
    }

    private Duration seconds(String id) {
        return Duration.ofNanos(Math.round(settings.number(id) * 1e9));
    }

    private String channel(String id) throws MeasurementException {
        String text = settings.text(id).strip();
        if (!text.matches("[A-Za-z0-9]{0,16}")) {
            throw MeasurementException.of(() -> TEXTS.text("open.noChannel", Answer.shown(text)));
        }
        return text;
    }

    private List<String> channels(String id) throws MeasurementException {
        List<String> channels = new ArrayList<>();
        for (String each : settings.text(id).split(",", -1)) {
            String channel = each.strip();
            if (!channel.matches("[A-Za-z0-9]{1,16}") || channels.contains(channel)) {
                throw MeasurementException.of(() -> TEXTS.text("open.noChannels", Answer.shown(settings.text(id))));
            }
            channels.add(channel);
        }
        return channels;
    }

    private List<Double> ranges() throws MeasurementException {
        List<Double> ranges = new ArrayList<>();
        String text = settings.text(BenchSettings.SCOPE + ".ranges");
        try {
            for (double range : Answer.numbers(text)) {
                if (range <= (ranges.isEmpty() ? 0 : ranges.get(ranges.size() - 1))) {
                    throw badRanges(text, null);
                }
                ranges.add(range);
            }
        } catch (AnswerFault wrong) {
            throw badRanges(text, wrong);
        }
        return ranges;
    }

    private static MeasurementException badRanges(String text, AnswerFault cause) {
        return MeasurementException.of(() -> TEXTS.text("open.noRanges", Answer.shown(text)), cause);
    }
}
