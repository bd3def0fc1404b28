// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.engine;

import java.time.Duration;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.concurrent.Callable;
import java.util.concurrent.CopyOnWriteArrayList;
import org.ohmstead.measure.BenchDriver;
import org.ohmstead.measure.DriverInfo;
import org.ohmstead.measure.Measurement;
import org.ohmstead.measure.MeasurementInfo;
import org.ohmstead.model.Precaution;
import org.ohmstead.model.Problem;
import org.ohmstead.model.Severity;
import org.ohmstead.units.text.Messages;
import org.ohmstead.units.text.Said;
import org.osgi.service.component.annotations.Component;
import org.osgi.service.component.annotations.Reference;
import org.osgi.service.component.annotations.ReferenceCardinality;
import org.osgi.service.component.annotations.ReferencePolicy;
import org.osgi.service.component.annotations.ReferencePolicyOption;

/**
 * The plug-ins that are there. They come and go at any time, on any thread. Of two with the same id the one that came first counts; when
 * it goes, the other takes its place. A plug-in with {@link #FAULTS_UNTIL_SET_ASIDE} faults in a row is set aside until somebody brings it
 * back, even if it goes and comes again meanwhile.
 */
@Component(service = Catalog.class)
public final class Catalog {
    /** After so many faults in a row a plug-in is not used any more. */
    public static final int FAULTS_UNTIL_SET_ASIDE = 3;

    private static final Messages TEXTS = Messages.of(Catalog.class);
    private static final Duration INFO_TIME = Duration.ofSeconds(5);
    private static final int MOST_REMARKS = 50;

    /** What came: either a plug-in, or a sentence why it is none. */
    private record Bound(PluginKind kind, Object instance, Optional<Plugin<?, ?>> plugin, String fault) {}

    private record Faults(int inARow, String last) {}

    private final List<Bound> bound = new ArrayList<>();
    private final Map<String, Faults> faults = new HashMap<>();
    private final Deque<Problem> remarks = new ArrayDeque<>();
    private final Set<String> benchesInUse = new HashSet<>();
    private final List<CatalogListener> listeners = new CopyOnWriteArrayList<>();

    /** Takes a measurement in. */
    @Reference(
            service = Measurement.class,
            cardinality = ReferenceCardinality.MULTIPLE,
            policy = ReferencePolicy.DYNAMIC,
            policyOption = ReferencePolicyOption.GREEDY)
    public void bindMeasurement(Measurement measurement) {
        bind(PluginKind.MEASUREMENT, measurement, () -> {
            MeasurementInfo info = measurement.info();
            Said name = Said.of(() -> measurement.info().name());
            return new Plugin<>(PluginKind.MEASUREMENT, info.id(), name, info.version(), measurement, info);
        });
    }

    /** Lets a measurement go; a run of it ends. */
    public void unbindMeasurement(Measurement measurement) {
        unbind(measurement);
    }

    /** Takes a bench driver in. */
    @Reference(
            service = BenchDriver.class,
            cardinality = ReferenceCardinality.MULTIPLE,
            policy = ReferencePolicy.DYNAMIC,
            policyOption = ReferencePolicyOption.GREEDY)
    public void bindDriver(BenchDriver driver) {
        bind(PluginKind.DRIVER, driver, () -> {
            DriverInfo info = driver.info();
            Said name = Said.of(() -> driver.info().name());
            return new Plugin<>(PluginKind.DRIVER, info.id(), name, info.version(), driver, info);
        });
    }

    /** Lets a bench driver go; a run on its bench ends. */
    public void unbindDriver(BenchDriver driver) {
        unbind(driver);
    }

    /** Takes a precaution in. */
    @Reference(
            service = Precaution.class,
            cardinality = ReferenceCardinality.MULTIPLE,
            policy = ReferencePolicy.DYNAMIC,
            policyOption = ReferencePolicyOption.GREEDY)
    public void bindPrecaution(Precaution precaution) {
        bind(PluginKind.PRECAUTION, precaution, () -> {
            String id = precaution.id();
            if (id.isBlank()) {
                throw new IllegalArgumentException("id is blank; it needs a text");
            }
            return new Plugin<>(PluginKind.PRECAUTION, id, Said.asIs(id), "", precaution, id);
        });
    }

    /** Lets a precaution go. */
    public void unbindPrecaution(Precaution precaution) {
        unbind(precaution);
    }

    private void bind(PluginKind kind, Object instance, Callable<Plugin<?, ?>> inquiry) {
        Contained.Answer<Plugin<?, ?>> answer =
                Contained.call("ohmstead " + kind.loggedWords() + " information", INFO_TIME, inquiry);
        Bound entry;
        if (answer instanceof Contained.Answer.Value<Plugin<?, ?>> value) {
            entry = new Bound(kind, instance, Optional.of(value.value()), "");
        } else if (answer instanceof Contained.Answer.Threw<Plugin<?, ?>> threw) {
            entry = new Bound(
                    kind,
                    instance,
                    Optional.empty(),
                    TEXTS.text("silent.failed", Contained.words(threw.cause()).text()));
        } else {
            entry = new Bound(
                    kind, instance, Optional.empty(), TEXTS.text("silent.late", Long.toString(INFO_TIME.toSeconds())));
        }
        synchronized (this) {
            bound.add(entry);
        }
        tell();
    }

    private void unbind(Object instance) {
        synchronized (this) {
            bound.removeIf(entry -> entry.instance == instance);
        }
        tell();
    }

    /** Returns how everything is now. */
    public synchronized CatalogView view() {
        return new CatalogOverview(plugins(), faultsByKey(), problems()).view();
    }

    private Map<String, Integer> faultsByKey() {
        Map<String, Integer> counts = new HashMap<>();
        faults.forEach((key, each) -> counts.put(key, each.inARow));
        return counts;
    }

    /** The plug-ins that count, with what each did last. */
    private Map<Plugin<?, ?>, String> plugins() {
        Map<String, Plugin<?, ?>> first = new TreeMap<>();
        for (Bound entry : bound) {
            entry.plugin.ifPresent(plugin -> first.putIfAbsent(plugin.key(), plugin));
        }
        Map<Plugin<?, ?>, String> plugins = new LinkedHashMap<>();
        first.forEach((key, plugin) -> plugins.put(
                plugin, Optional.ofNullable(faults.get(key)).map(Faults::last).orElse("")));
        return plugins;
    }

    private List<Problem> problems() {
        List<Problem> problems = new ArrayList<>();
        Set<String> seen = new HashSet<>();
        for (Bound entry : bound) {
            String type = entry.instance.getClass().getName();
            if (entry.plugin.isEmpty()) {
                problems.add(new Problem(
                        Severity.ERROR,
                        type,
                        TEXTS.text("silent", entry.kind.named(type), entry.fault),
                        TEXTS.text("author.remedy")));
            } else if (!seen.add(entry.plugin.get().key())) {
                problems.add(new Problem(
                        Severity.WARNING,
                        entry.plugin.get().id(),
                        TEXTS.text(
                                "second",
                                entry.kind.named(type),
                                entry.plugin.get().id()),
                        TEXTS.text("second.remedy")));
            }
        }
        for (Bound entry : bound) {
            entry.plugin
                    .filter(this::isSetAside)
                    .ifPresent(plugin -> problems.add(new Problem(
                            Severity.WARNING,
                            plugin.id(),
                            TEXTS.text(
                                    "setAside.row",
                                    plugin.title(),
                                    Integer.toString(FAULTS_UNTIL_SET_ASIDE),
                                    faults.get(plugin.key()).last()),
                            TEXTS.text("setAside.row.remedy"))));
        }
        problems.addAll(remarks);
        return problems;
    }

    /** Adds somebody who hears of changes. */
    public void addListener(CatalogListener listener) {
        listeners.add(listener);
    }

    /** Lets somebody go who heard of changes. */
    public void removeListener(CatalogListener listener) {
        listeners.remove(listener);
    }

    private void tell() {
        CatalogView view = view();
        for (CatalogListener listener : listeners) {
            Contained.here(() -> {
                listener.changed(view);
                return null;
            });
        }
    }

    /** Uses a plug-in again that was set aside, and forgets its faults. */
    public void bringBack(PluginKind kind, String id) {
        synchronized (this) {
            faults.remove(kind.name() + " " + id);
        }
        tell();
    }

    Optional<Plugin<Measurement, MeasurementInfo>> measurement(String id) {
        return find(PluginKind.MEASUREMENT, id)
                .map(plugin -> new Plugin<>(
                        plugin.kind(),
                        plugin.id(),
                        plugin.name(),
                        plugin.version(),
                        (Measurement) plugin.instance(),
                        (MeasurementInfo) plugin.info()));
    }

    Optional<Plugin<BenchDriver, DriverInfo>> driver(String id) {
        return find(PluginKind.DRIVER, id)
                .map(plugin -> new Plugin<>(
                        plugin.kind(),
                        plugin.id(),
                        plugin.name(),
                        plugin.version(),
                        (BenchDriver) plugin.instance(),
                        (DriverInfo) plugin.info()));
    }

    synchronized List<Plugin<Precaution, String>> precautions() {
        List<Plugin<Precaution, String>> all = new ArrayList<>();
        for (Plugin<?, ?> plugin : plugins().keySet()) {
            if (plugin.instance() instanceof Precaution precaution && plugin.kind() == PluginKind.PRECAUTION) {
                all.add(new Plugin<>(plugin.kind(), plugin.id(), plugin.name(), "", precaution, plugin.id()));
            }
        }
        return all;
    }

    private synchronized Optional<Plugin<?, ?>> find(PluginKind kind, String id) {
        return bound.stream()
                .flatMap(entry -> entry.plugin.stream())
                .filter(plugin -> plugin.kind() == kind && plugin.id().equals(id))
                .findFirst();
    }

    synchronized boolean isThere(Plugin<?, ?> plugin) {
        return bound.stream().anyMatch(entry -> entry.instance == plugin.instance());
    }

    synchronized boolean isSetAside(Plugin<?, ?> plugin) {
        Faults known = faults.get(plugin.key());
        return known != null && known.inARow >= FAULTS_UNTIL_SET_ASIDE;
    }

    void fault(Plugin<?, ?> plugin, String sentence) {
        synchronized (this) {
            Faults known = faults.getOrDefault(plugin.key(), new Faults(0, ""));
            faults.put(plugin.key(), new Faults(known.inARow + 1, sentence));
        }
        tell();
    }

    synchronized void didWell(Plugin<?, ?> plugin) {
        if (!isSetAside(plugin)) {
            faults.remove(plugin.key());
        }
    }

    /** Keeps a remark about a plug-in that nobody waits for any more. */
    void remark(Plugin<?, ?> plugin, String sentence) {
        Problem problem = new Problem(Severity.WARNING, plugin.id(), sentence, TEXTS.text("author.remedy"));
        synchronized (this) {
            if (remarks.contains(problem)) {
                return;
            }
            remarks.addLast(problem);
            if (remarks.size() > MOST_REMARKS) {
                remarks.removeFirst();
            }
        }
        tell();
    }

    synchronized boolean claimBench(String key) {
        return benchesInUse.add(key);
    }

    synchronized void releaseBench(String key) {
        benchesInUse.remove(key);
    }
}
