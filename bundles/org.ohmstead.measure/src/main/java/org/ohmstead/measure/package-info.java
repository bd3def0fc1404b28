// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

/**
 * What third parties write plug-ins against: {@link org.ohmstead.measure.Measurement} for a procedure,
 * {@link org.ohmstead.measure.BenchDriver} for access to a bench, {@link org.ohmstead.model.Precaution} for a check before a step. A plug-in
 * is a bundle with one class that carries {@code @Component}; what it can be set to, needs and gives is data, from which forms, help,
 * storage and the command line are made.
 *
 * <p>Threads, deadlines, cancelling and what happens when a plug-in fails are the engine's business. Versions of this package are semantic.
 *
 * <p>A measurement that tells the highest output volts without a signal:
 *
 * <pre>{@code
 * @Component
 * public final class QuietPeak implements Measurement {
 *     private static final FigureInfo PEAK = new FigureInfo("peak", "highest volts without a signal", Unit.VOLT, false);
 *     private static final MeasurementInfo INFO = new MeasurementInfo(
 *             "org.example.quietpeak", "1.0.0", "Peak without a signal", "Listens while nothing is fed.",
 *             List.of(), Set.of(Ability.WAVEFORM),
 *             List.of(new Setting.Number("seconds", "time", "How long it listens.", Unit.SECOND, 0.5, 0.1, 0.8)),
 *             List.of(PEAK), Duration.ofMinutes(1));
 *
 *     public MeasurementInfo info() {
 *         return INFO;
 *     }
 *
 *     public Readiness readiness(Subject subject) {
 *         return new Readiness.Ready();
 *     }
 *
 *     public MeasurementResult run(Subject subject, Settings settings, Bench bench, Progress progress)
 *             throws MeasurementException, InterruptedException {
 *         progress.at(0, "listening");
 *         bench.feed(new Feed.Silence());
 *         Acquisition quiet = bench.acquire(settings.number("seconds"));
 *         progress.recorded(quiet);
 *         progress.checkpoint();
 *         double peakVolts = quiet.output().channels().stream()
 *                 .flatMapToDouble(channel -> Arrays.stream(channel.toArray()))
 *                 .map(Math::abs)
 *                 .max()
 *                 .orElse(0);
 *         return MeasurementResult.of(Figure.of(PEAK, peakVolts));
 *     }
 * }
 * }</pre>
 *
 * <p>A driver of a bench that can record and whose load and supply a person sets, so that it is opened anew for every step;
 * {@code Recorder} stands for the access to the instrument:
 *
 * <pre>{@code
 * @Component
 * public final class RecorderDriver implements BenchDriver {
 *     private static final DriverInfo INFO = new DriverInfo(
 *             "org.example.recorder", "1.0.0", "Recorder", "A recorder at the amplifier's output.", DriverInfo.Kind.REAL,
 *             List.of(new Setting.Text("address", "address", "Where the recorder is.", "192.0.2.1")));
 *
 *     public DriverInfo info() {
 *         return INFO;
 *     }
 *
 *     public Bench open(Subject subject, Settings settings) throws MeasurementException {
 *         return new RecorderBench(new Recorder(settings.text("address"), subject.channelCount()));
 *     }
 * }
 *
 * final class RecorderBench implements Bench {
 *     private final Recorder recorder;
 *
 *     RecorderBench(Recorder recorder) {
 *         this.recorder = recorder;
 *     }
 *
 *     public Set<Ability> abilities() {
 *         return Set.of(Ability.WAVEFORM);
 *     }
 *
 *     public void connect(Mode mode, BenchLoad load) throws MeasurementException {
 *         throw new MeasurementException("This bench connects no loads. Connect it by hand, then open the bench.");
 *     }
 *
 *     public void setSupplyVolts(double supplyVolts) throws MeasurementException {
 *         throw new MeasurementException("This bench sets no supply. Set it by hand, then open the bench.");
 *     }
 *
 *     public void feed(Feed feed) throws MeasurementException {
 *         if (!(feed instanceof Feed.Silence)) {
 *             throw new MeasurementException("This bench has no source. Choose a measurement that feeds nothing.");
 *         }
 *     }
 *
 *     public Acquisition acquire(double seconds) throws MeasurementException, InterruptedException {
 *         return Acquisition.of(recorder.record(seconds), recorder.voltsPerFullScale(), observe());
 *     }
 *
 *     public Observation observe() {
 *         OptionalDouble none = OptionalDouble.empty();
 *         return new Observation(Instant.now(), none, none, none, none);
 *     }
 *
 *     public void standDown() {
 *         // Nothing is fed, and there is no supply to switch off.
 *     }
 *
 *     public void close() throws MeasurementException {
 *         recorder.close();
 *     }
 * }
 * }</pre>
 */
package org.ohmstead.measure;
