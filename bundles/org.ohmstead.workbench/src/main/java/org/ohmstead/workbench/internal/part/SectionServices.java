// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.internal.part;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import org.eclipse.core.runtime.ILog;
import org.ohmstead.workbench.internal.section.SectionPages;
import org.ohmstead.workbench.section.SectionPage;
import org.ohmstead.workbench.session.ProblemProvider;
import org.osgi.framework.BundleContext;
import org.osgi.framework.FrameworkUtil;
import org.osgi.framework.InvalidSyntaxException;
import org.osgi.framework.ServiceReference;

/** What other bundles registered for the workbench. */
public final class SectionServices {
    private SectionServices() {}

    /** Returns the pages of a project: the workbench's own and those that are registered now. */
    public static SectionPages pages() {
        return new SectionPages(services(SectionPage.class));
    }

    /** Returns the providers of problems that are registered now. */
    public static List<ProblemProvider> problemProviders() {
        return services(ProblemProvider.class);
    }

    private static <T> List<T> services(Class<T> type) {
        BundleContext context = FrameworkUtil.getBundle(SectionServices.class).getBundleContext();
        List<T> found = new ArrayList<>();
        for (ServiceReference<T> reference : references(context, type)) {
            // Null when the service's bundle could not make it; that bundle's own failure is in the Error Log.
            T service = context.getService(reference);
            if (service != null) {
                found.add(service);
            }
        }
        return found;
    }

    private static <T> Collection<ServiceReference<T>> references(BundleContext context, Class<T> type) {
        try {
            return context.getServiceReferences(type, null).stream()
                    .sorted((first, second) -> second.compareTo(first))
                    .toList();
        } catch (InvalidSyntaxException e) {
            ILog.of(SectionServices.class).error("The services of " + type.getName() + " could not be listed.", e);
            return List.of();
        }
    }
}
