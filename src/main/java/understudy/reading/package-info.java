/** From signal to what the module's display should show, and back; and what displayed numbers tell about the module's scale. */
package understudy.reading;
