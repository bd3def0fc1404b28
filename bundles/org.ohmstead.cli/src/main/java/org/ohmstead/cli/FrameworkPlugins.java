// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import java.util.Hashtable;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.ohmstead.measure.bench.OperatorPort;
import org.ohmstead.measure.engine.Catalog;
import org.osgi.framework.Bundle;
import org.osgi.framework.BundleContext;
import org.osgi.framework.BundleException;
import org.osgi.framework.Constants;
import org.osgi.framework.FrameworkUtil;
import org.osgi.framework.InvalidSyntaxException;
import org.osgi.framework.ServiceEvent;
import org.osgi.framework.ServiceListener;
import org.osgi.framework.ServiceReference;
import org.osgi.framework.ServiceRegistration;

/** The plug-ins that are installed: services of the framework. */
final class FrameworkPlugins implements PluginSource, AutoCloseable {
    private static final String COMPONENTS = "Service-Component";
    private static final String COMPONENT_RUNTIME = "org.apache.felix.scr";
    private static final long WAIT_SECONDS = 10;

    private final Console console;
    private Optional<ServiceRegistration<OperatorPort>> registration = Optional.empty();
    private Optional<ServiceReference<Catalog>> reference = Optional.empty();

    FrameworkPlugins(Console console) {
        this.console = console;
    }

    @Override
    public Catalog catalog(OperatorPort operator) throws OutsideException {
        BundleContext context = context().orElseThrow(() -> new OutsideException(Texts.of("plugins.missing")));
        DropIns.install(context, console);
        startComponents(context);
        // Whoever works on the command line is asked there, even where a window could ask as well.
        Hashtable<String, Object> first = new Hashtable<>();
        first.put(Constants.SERVICE_RANKING, Integer.MAX_VALUE);
        registration = Optional.of(context.registerService(OperatorPort.class, operator, first));
        reference = Optional.of(awaited(context));
        return Optional.ofNullable(context.getService(reference.get()))
                .orElseThrow(() -> new OutsideException(Texts.of("plugins.missing")));
    }

    private static Optional<BundleContext> context() {
        return Optional.ofNullable(FrameworkUtil.getBundle(Ohmstead.class)).map(Bundle::getBundleContext);
    }

    /** Where nobody started the bundles with components, such as in a framework made for tests, they are started here. */
    static void startComponents(BundleContext context) throws OutsideException {
        for (Bundle bundle : context.getBundles()) {
            boolean runtime = COMPONENT_RUNTIME.equals(bundle.getSymbolicName());
            boolean waiting = (bundle.getState() & (Bundle.INSTALLED | Bundle.RESOLVED)) != 0
                    && bundle.getHeaders("").get(Constants.FRAGMENT_HOST) == null;
            if (waiting && (runtime || bundle.getHeaders("").get(COMPONENTS) != null)) {
                start(bundle, runtime);
            }
        }
    }

    private static void start(Bundle bundle, boolean runtime) throws OutsideException {
        try {
            bundle.start(runtime ? Bundle.START_TRANSIENT : Bundle.START_TRANSIENT | Bundle.START_ACTIVATION_POLICY);
        } catch (BundleException failed) {
            if (runtime) {
                throw new OutsideException(Texts.of("plugins.missing") + " (" + failed.getMessage() + ")");
            }
            // A module that does not start is missing from the list; the others are there.
            System.getLogger(FrameworkPlugins.class.getName())
                    .log(System.Logger.Level.WARNING, bundle.getSymbolicName() + " could not be started", failed);
        }
    }

    private static ServiceReference<Catalog> awaited(BundleContext context) throws OutsideException {
        CountDownLatch there = new CountDownLatch(1);
        ServiceListener listener = event -> {
            if (event.getType() == ServiceEvent.REGISTERED) {
                there.countDown();
            }
        };
        try {
            context.addServiceListener(listener, "(" + Constants.OBJECTCLASS + "=" + Catalog.class.getName() + ")");
            ServiceReference<Catalog> found = context.getServiceReference(Catalog.class);
            if (found == null && there.await(WAIT_SECONDS, TimeUnit.SECONDS)) {
                found = context.getServiceReference(Catalog.class);
            }
            return Optional.ofNullable(found).orElseThrow(() -> new OutsideException(Texts.of("plugins.missing")));
        } catch (InvalidSyntaxException never) {
            throw new IllegalStateException("the filter is written here", never);
        } catch (InterruptedException told) {
            Thread.currentThread().interrupt();
            throw new OutsideException(Texts.of("plugins.interrupted"));
        } finally {
            context.removeServiceListener(listener);
        }
    }

    @Override
    public void close() {
        context().ifPresent(context -> reference.ifPresent(context::ungetService));
        registration.ifPresent(ServiceRegistration::unregister);
        reference = Optional.empty();
        registration = Optional.empty();
    }
}
